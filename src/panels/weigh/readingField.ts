import type { Aircraft, WeighIn } from '../../model/document/types';
import type { OfReading } from '../../model/weigh/measured';
import { changeReading, readingOf } from '../../model/weigh/weighIns';

type By = WeighIn['reading']['by'];
type FigureKey<K extends By> = {
  [P in keyof OfReading<K>]-?: OfReading<K>[P] extends number | null | undefined ? P : never;
}[keyof OfReading<K>] &
  string;

/** How a field reads and writes one figure of a reading. */
export const readingField = <K extends By>(id: string, by: K, key: FigureKey<K>) => ({
  read: (aircraft: Aircraft) => readingOf(aircraft, id, by)?.[key] as number | null | undefined,
  write: (aircraft: Aircraft, value: number | null) =>
    changeReading(aircraft, id, by, () => ({ [key]: value }) as Partial<OfReading<K>>),
});

type ListKey<K extends By> = {
  [P in keyof OfReading<K>]-?: OfReading<K>[P] extends readonly object[] ? P : never;
}[keyof OfReading<K>] &
  string;
type RowOf<K extends By, P extends ListKey<K>> = OfReading<K>[P] extends readonly (infer R)[] ? R : never;

/** How the rows of a reading are read and changed. */
export function readingRows<K extends By, P extends ListKey<K>>(id: string, by: K, key: P) {
  type Row = RowOf<K, P>;
  const rows = (aircraft: Aircraft) => (readingOf(aircraft, id, by)?.[key] ?? []) as readonly Row[];
  const put = (aircraft: Aircraft, next: readonly Row[]) =>
    changeReading(aircraft, id, by, () => ({ [key]: next }) as unknown as Partial<OfReading<K>>);
  return {
    rows,
    add: (aircraft: Aircraft, row: Row) => put(aircraft, [...rows(aircraft), row]),
    change: (aircraft: Aircraft, at: number, change: Partial<Row>) =>
      put(
        aircraft,
        rows(aircraft).map((row, index) => (index === at ? Object.assign({}, row, change) : row)),
      ),
    remove: (aircraft: Aircraft, at: number) =>
      put(
        aircraft,
        rows(aircraft).filter((_, index) => index !== at),
      ),
  };
}
