import { freeId } from '../document/ids';
import type { Aircraft, ScaleReading, WeighIn } from '../document/types';

type Reading = WeighIn['reading'];

const NONE: readonly WeighIn[] = [];

/** The log, in the order that it was made. */
export const weighInsOf = ({ weighIns = NONE }: Aircraft): readonly WeighIn[] => weighIns;

export const weighInById = (aircraft: Aircraft, id: string | null): WeighIn | undefined =>
  weighInsOf(aircraft).find((entry) => entry.id === id);

const lastOf = (log: readonly WeighIn[]): WeighIn | undefined =>
  log.reduce<WeighIn | undefined>(
    (last, entry) => (last && last.date > entry.date ? last : entry),
    undefined,
  );

/** The one of the latest day; of one day the one that was entered last. */
export const lastWeighIn = (aircraft: Aircraft): WeighIn | undefined => lastOf(weighInsOf(aircraft));

/** The last that says where the CG is: any but a swing. */
export const lastOfCg = (aircraft: Aircraft): WeighIn | undefined =>
  lastOf(weighInsOf(aircraft).filter(({ reading }) => reading.by !== 'swing'));

export function addWeighIn(
  aircraft: Aircraft,
  entry: Omit<WeighIn, 'id'>,
): { readonly aircraft: Aircraft; readonly id: string } {
  const id = freeId(aircraft, `weighed ${entry.date}`, 'weighed');
  return { aircraft: { ...aircraft, weighIns: [...weighInsOf(aircraft), { ...entry, id }] }, id };
}

export const updateWeighIn = (aircraft: Aircraft, id: string, change: Partial<WeighIn>): Aircraft => ({
  ...aircraft,
  weighIns: weighInsOf(aircraft).map((entry) => (entry.id === id ? { ...entry, ...change } : entry)),
});

export const removeWeighIn = (aircraft: Aircraft, id: string): Aircraft => ({
  ...aircraft,
  weighIns: weighInsOf(aircraft).filter((entry) => entry.id !== id),
});

/** Changes the reading of one that is of that sort. */
export function updateReading<K extends Reading['by']>(
  aircraft: Aircraft,
  id: string,
  by: K,
  change: Partial<Extract<Reading, { readonly by: K }>>,
): Aircraft {
  const entry = weighInById(aircraft, id);
  if (entry?.reading.by !== by) return aircraft;
  return updateWeighIn(aircraft, id, { reading: { ...entry.reading, ...change } as Reading });
}

/** Changes one scale of a weigh-in on scales. */
export function updateScale(
  aircraft: Aircraft,
  id: string,
  at: number,
  change: Partial<ScaleReading>,
): Aircraft {
  const entry = weighInById(aircraft, id);
  if (entry?.reading.by !== 'scales') return aircraft;
  const scales = entry.reading.scales.map((scale, index) => (index === at ? { ...scale, ...change } : scale));
  return updateReading(aircraft, id, 'scales', { scales });
}

/** Changes what a weigh-in of that sort read, worked out from what it read before. */
export function changeReading<K extends Reading['by']>(
  aircraft: Aircraft,
  id: string,
  by: K,
  change: (reading: Extract<Reading, { readonly by: K }>) => Partial<Extract<Reading, { readonly by: K }>>,
): Aircraft {
  const reading = readingOf(aircraft, id, by);
  return reading ? updateReading(aircraft, id, by, change(reading)) : aircraft;
}

/** What a weigh-in read, if it is of that sort. */
export function readingOf<K extends Reading['by']>(
  aircraft: Aircraft,
  id: string,
  by: K,
): Extract<Reading, { readonly by: K }> | null {
  const reading = weighInById(aircraft, id)?.reading;
  return reading?.by === by ? (reading as Extract<Reading, { readonly by: K }>) : null;
}

/** Notes in the log what was changed in the list because of a weigh-in. */
export function noteCorrected(aircraft: Aircraft, id: string, date: string, what: string): Aircraft {
  const corrected = weighInById(aircraft, id)?.corrected ?? [];
  return updateWeighIn(aircraft, id, { corrected: [...corrected, { date, what }] });
}
