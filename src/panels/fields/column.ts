import type { Quantity } from '../../model/units';

/** One column of a table of rows: what it is called and what it holds. */
export interface Column<Row> {
  readonly key: keyof Row & string;
  readonly label: string;
  /** `text` for a name. */
  readonly quantity: Quantity | 'text';
  /** The file's unit for each unit on the screen, where the two differ: 0.01 for a share in percent. */
  readonly scale?: number;
}
