import { setPower } from '../../model/document/powerEdits';
import type { Aircraft, PartPower } from '../../model/document/types';
import type { Asked } from '../../model/glossary/glossary';
import { Measure } from '../fields/Measure';

export const partOf = (id: string) => (aircraft: Aircraft) => aircraft.parts.find((part) => part.id === id);
export const powerOf = (id: string) => (aircraft: Aircraft) => partOf(id)(aircraft)?.power;

/** Which part a form is about. */
export interface Of {
  readonly id: string;
  readonly name: string;
}

type Section = 'pack' | 'use' | 'regulator';

/** Changes figures of one section of a part's wiring. */
export function changed<K extends Section>(
  aircraft: Aircraft,
  id: string,
  section: K,
  change: Partial<NonNullable<PartPower[K]>>,
): Aircraft {
  const power = powerOf(id)(aircraft);
  const before = power?.[section];
  return before ? setPower(aircraft, id, { ...power, [section]: { ...before, ...change } }) : aircraft;
}

interface FigureProps<K extends Section> extends Of {
  readonly section: K;
  readonly field: keyof NonNullable<PartPower[K]> & string;
  readonly label: string;
  readonly unit: string;
  readonly term?: Asked;
  /** What an empty field means; without it there must be a figure. */
  readonly empty?: string;
}

/** One figure of a part’s wiring. */
export function Figure<K extends Section>({
  id,
  name,
  section,
  field,
  label,
  unit,
  empty,
  term,
}: FigureProps<K>) {
  const put = (aircraft: Aircraft, value: number | undefined) =>
    changed(aircraft, id, section, { [field]: value } as Partial<NonNullable<PartPower[K]>>);
  return (
    <Measure
      label={label}
      term={term}
      quantity="number"
      suffix={unit}
      step={`Change ${label.toLowerCase()} of ${name}`}
      read={(aircraft) => {
        const from = powerOf(id)(aircraft)?.[section] as Readonly<Record<string, unknown>> | undefined;
        const value = from?.[field];
        return typeof value === 'number' ? value : null;
      }}
      write={put}
      {...(empty !== undefined && { empty: { means: empty, write: (aircraft) => put(aircraft, undefined) } })}
    />
  );
}
