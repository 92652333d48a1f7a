import { measuredThings } from '../../model/balance/measurements';
import { massSources, sizeSources } from '../../model/document/schema/sources';
import type { Aircraft, MassFrom, SizeFrom } from '../../model/document/types';
import { massFromWords, sizeFromWords } from '../../model/words/sourceWords';
import type { Bench } from '../../store/bench';
import { useAircraft } from '../../store/react';
import { Choice } from '../fields/Choice';
import { Live } from '../Live';
import { later } from '../later';
import { type Readings, useReadings } from '../readings';
import { SourceMark } from '../sources/SourceMark';

const FindMass = later(
  () => import('../sources/FindMass'),
  (module) => module.FindMass,
  { place: 'Finding a mass' },
);

interface Sourced {
  readonly massFrom?: MassFrom | undefined;
  readonly sizeFrom?: SizeFrom | undefined;
  readonly plusMinusG?: number | undefined;
}

interface SourceProps {
  readonly name: string;
  readonly read: (aircraft: Aircraft) => Sourced | null | undefined;
  readonly write: (aircraft: Aircraft, change: Sourced) => Aircraft;
}

const NOT_SAID = '';
const massOptions = [
  { value: NOT_SAID, label: 'not said' },
  ...massSources.map((value) => ({ value: value as string, label: massFromWords[value] })),
];
const sizeOptions = [
  { value: NOT_SAID, label: 'not said' },
  ...sizeSources.map((value) => ({ value: value as string, label: sizeFromWords[value] })),
];

const massFromOf = (word: string): MassFrom | undefined => massSources.find((source) => source === word);
const sizeFromOf = (word: string): SizeFrom | undefined => sizeSources.find((source) => source === word);

/**
 * What a mass that is typed over makes of its source: one that was unknown is assumed from then on, until somebody says
 * better; any other stays what it was.
 */
export const sourceOfTyped = (item: Sourced | null | undefined): Sourced =>
  item?.massFrom === 'unknown' ? { massFrom: 'assumed' } : {};

interface MassSourceProps extends SourceProps {
  readonly id: string;
  /** Why a mass cannot come from there, in a sentence; null where it can. */
  readonly refuses?: (aircraft: Aircraft, source: MassFrom | undefined) => string | null;
}

/** Where a mass comes from, and the ± that this gives it; of an unknown one, ways to find it. */
export function MassSource({ id, name, read, write, refuses }: MassSourceProps) {
  const say = useReadings();
  const source = useAircraft((aircraft) => read(aircraft)?.massFrom ?? null);
  return (
    <>
      <Choice
        label="Mass is"
        step={`Say where the mass of ${name} comes from`}
        options={massOptions}
        mark={<SourceMark of={source ?? 'not said'} />}
        read={(aircraft) => read(aircraft)?.massFrom ?? NOT_SAID}
        // A ± that was stated was that of the source before.
        write={(aircraft, word) => {
          const massFrom = massFromOf(word);
          return refuses?.(aircraft, massFrom) ?? write(aircraft, { massFrom, plusMinusG: undefined });
        }}
      />
      <p className="hint source-spread">
        <Live read={(bench) => spreadWords(bench, id, say)} />
      </p>
      {source === 'unknown' && <FindMass id={id} name={name} />}
    </>
  );
}

/** "± 12 g", and "as stated" where somebody entered it; of an element that has two sides, each side's. */
function spreadWords({ document, balance }: Bench, id: string, say: Readings): string {
  const things = measuredThings(document.current(), balance.get().bodies);
  const thing = things.find(({ sourceId }) => sourceId === id);
  if (!thing) return '';
  const each = things.filter(({ sourceId }) => sourceId === id).length > 1 ? ' each side' : '';
  return `± ${say.mass(thing.plusMinus.g)}${each}, ${thing.stated ? 'as stated' : 'as is usual for that'}`;
}

/** Where the sizes come from; the less they are known, the less is the place of the CG. */
export function SizeSource({ name, read, write }: SourceProps) {
  const source = useAircraft((aircraft) => read(aircraft)?.sizeFrom ?? null);
  return (
    <Choice
      label="Sizes are"
      step={`Say where the sizes of ${name} come from`}
      options={sizeOptions}
      mark={<SourceMark of={source ?? 'not said'} />}
      read={(aircraft) => read(aircraft)?.sizeFrom ?? NOT_SAID}
      write={(aircraft, word) => write(aircraft, { sizeFrom: sizeFromOf(word) })}
    />
  );
}
