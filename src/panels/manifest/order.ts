import type { ManifestRow } from '../../model/words/manifestRows';

/** `own` is the order of the file, into which items are put by hand. */
export type SortKey = 'name' | 'mass' | 'station' | 'moment' | 'own';

export interface Sort {
  readonly key: SortKey;
  readonly falling: boolean;
}

/** Nose to tail, as things lie on the beam. */
export const usualSort: Sort = { key: 'station', falling: false };

/** A row's moment about the CG along the station axis, g·mm, + tail-heavy. */
export const momentAbout = (massG: number, stationMm: number | undefined, cgMm: number | null): number =>
  stationMm === undefined || cgMm === null ? 0 : massG * (stationMm - cgMm);

/** Rows whose name or role has the words looked for, in the order asked for; equals keep the file's order. */
export function orderRows(
  rows: readonly ManifestRow[],
  sort: Sort,
  words: string,
  cgMm: number | null,
): ManifestRow[] {
  const wanted = words.toLowerCase().split(/\s+/).filter(Boolean);
  const value = ({ massG, cgMm: at }: ManifestRow): number => {
    if (sort.key === 'mass') return massG;
    if (sort.key === 'moment') return momentAbout(massG, at?.[0], cgMm);
    return at?.[0] ?? Number.POSITIVE_INFINITY;
  };
  const compare = (a: ManifestRow, b: ManifestRow) =>
    sort.key === 'name' ? a.name.localeCompare(b.name, 'en', { numeric: true }) : value(a) - value(b) || 0;
  const found = rows.filter(({ name, role }) =>
    wanted.every((word) => `${name} ${role}`.toLowerCase().includes(word)),
  );
  if (sort.key === 'own') return found;
  return found.sort((a, b) => (sort.falling ? compare(b, a) : compare(a, b)));
}
