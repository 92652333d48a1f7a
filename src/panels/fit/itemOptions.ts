import { itemById } from '../../model/document/edit';
import { roles } from '../../model/document/schema/aircraft';
import type { Aircraft } from '../../model/document/types';
import type { Option } from '../fields/Choice';
import { roleLooks } from '../roleLooks';

/** Every part and tank, to choose from. */
export const itemOptions = ({ parts, tanks }: Aircraft): Option[] =>
  [...parts, ...tanks].map(({ id, name }) => ({ value: id, label: name }));

/** Every role, then every part and tank. */
export const roleAndItemOptions = (aircraft: Aircraft): Option[] => [
  ...roles.map((role) => ({ value: role, label: `Anything that is ${roleLooks[role].label}` })),
  ...itemOptions(aircraft),
];

/** What a rule calls one of its sides: the name of the part with that id, else the role. */
export const ruleWord = (aircraft: Aircraft, word: string): string => itemById(aircraft, word)?.name ?? word;
