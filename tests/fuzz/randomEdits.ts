import { shelf } from '../../src/model/airframe/shelf';
import { breakPair, removeItem, updatePart, updateTank } from '../../src/model/document/edit';
import { removeBay } from '../../src/model/document/fitEdits';
import { addSwitch, removeSwitch } from '../../src/model/document/switchEdits';
import { makePair, pairableWith } from '../../src/model/document/twins';
import type { Aircraft } from '../../src/model/document/types';
import { bindToBay, withBay, withHatch, withLead, withProposedBays } from '../../src/panels/fit/roomEdits';
import { duplicate, mirrored, toggleLock } from '../../src/panels/manifest/actions';
import { addFromShelf, addThing, newThings } from '../../src/panels/manifest/newThings';
import type { Chance } from './chance';

/** An edit as a person makes one on the bench; a sentence where there is nothing to make it on. */
export type RandomEdit = (aircraft: Aircraft, chance: Chance) => Aircraft | string;

const figures = [
  0,
  -1,
  0.001,
  1,
  5,
  47.3,
  250,
  1200,
  99_999,
  1e5,
  1e6,
  1e9,
  Number.NaN,
  Infinity,
  -1e-9,
] as const;
const names = [
  'Pack',
  'Bay',
  'Outlet',
  'constructor',
  'Größe 3',
  'מקלט',
  'a\u202eb',
  'a\nb',
  ' ',
  'radio',
] as const;

const idIn = (list: readonly { readonly id: string }[] | undefined, chance: Chance): string =>
  list && list.length > 0 ? chance.pick(list).id : 'nothing';
const anyId = ({ parts, tanks, structure }: Aircraft, chance: Chance): string =>
  idIn([...parts, ...tanks, ...structure], chance);

type Plain = Record<string, unknown>;

/** Any figure of anything in the aircraft, typed anew: every field of every card is one of these. */
const typed: RandomEdit = (aircraft, chance) => {
  const root = structuredClone(aircraft) as unknown as Plain;
  const places: { holder: Plain; key: string }[] = [];
  const left: Plain[] = [root];
  for (let holder = left.pop(); holder; holder = left.pop()) {
    for (const [key, value] of Object.entries(holder)) {
      if (typeof value === 'number' && key !== 'version') places.push({ holder, key });
      else if (typeof value === 'object' && value !== null) left.push(value as Plain);
    }
  }
  if (places.length === 0) return 'There is no figure.';
  const { holder, key } = chance.pick(places);
  const value = holder[key] as number;
  holder[key] = chance.pick([
    ...figures,
    value * 1.3,
    value * 0.7,
    value + 10,
    value - 10,
    -value,
    value / 2,
  ]);
  return root as unknown as Aircraft;
};

const orSentence = (added: { readonly aircraft: Aircraft } | null): Aircraft | string =>
  added?.aircraft ?? 'There is nothing to make another of.';

const renamed: RandomEdit = (aircraft, chance) => {
  const change = { name: chance.pick(names) };
  const id = idIn(aircraft.parts, chance);
  return chance.next() < 0.5
    ? updatePart(aircraft, id, change)
    : updateTank(aircraft, idIn(aircraft.tanks, chance), change);
};

const withoutRow: RandomEdit = (aircraft, chance) => ({
  ...aircraft,
  referencePoints: aircraft.referencePoints.filter(({ id }) => id !== idIn(aircraft.referencePoints, chance)),
});

const withoutFuel: RandomEdit = (aircraft) => ({ ...aircraft, fuel: null });

export const randomEdits: readonly RandomEdit[] = [
  typed,
  typed,
  typed,
  typed,
  renamed,
  withoutRow,
  withoutFuel,
  (aircraft, chance) => orSentence(duplicate(aircraft, anyId(aircraft, chance))),
  (aircraft, chance) => orSentence(mirrored(aircraft, anyId(aircraft, chance))),
  (aircraft, chance) => breakPair(aircraft, anyId(aircraft, chance)),
  (aircraft, chance) => {
    const id = anyId(aircraft, chance);
    const other = pairableWith(aircraft, id);
    return other ? makePair(aircraft, id, other.id) : 'Nothing stands on the other side.';
  },
  (aircraft, chance) => removeItem(aircraft, anyId(aircraft, chance)),
  (aircraft, chance) => removeItem(aircraft, anyId(aircraft, chance)),
  (aircraft, chance) => toggleLock(aircraft, anyId(aircraft, chance)),
  (aircraft, chance) => addThing(aircraft, chance.pick(newThings).kind, chance.pick(figures)).aircraft,
  (aircraft, chance) => addFromShelf(aircraft, chance.pick(shelf), [chance.below(900), 0, 0]).aircraft,
  (aircraft, chance) =>
    addSwitch(aircraft, chance.pick(names), chance.pick(['aboard', 'on-stand', 'filled'] as const), [
      anyId(aircraft, chance),
    ]),
  (aircraft, chance) => removeSwitch(aircraft, idIn(aircraft.switches, chance)),
  (aircraft, chance) => withBay(aircraft, chance.below(900)),
  (aircraft) => withProposedBays(aircraft),
  (aircraft, chance) => withHatch(aircraft, chance.below(900), 50),
  (aircraft) => withLead(aircraft),
  (aircraft, chance) => bindToBay(aircraft, idIn(aircraft.parts, chance), idIn(aircraft.bays, chance)),
  (aircraft, chance) => removeBay(aircraft, idIn(aircraft.bays, chance)),
  (aircraft, chance) =>
    updateTank(aircraft, idIn(aircraft.tanks, chance), { feeds: idIn(aircraft.tanks, chance) }),
];
