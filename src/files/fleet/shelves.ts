/** The tables of the fleet in the browser's store. */
export type Table = 'cards' | 'aircraft' | 'revisions';

/** One row that is written, or taken away where there is no value. */
export interface Write {
  readonly table: Table;
  readonly key: string;
  readonly value?: unknown;
}

/** The little that the fleet needs of a store; a browser's database, or this tab's memory. */
export interface Shelves {
  get(table: Table, key: string): Promise<unknown>;
  /** The rows whose keys begin so, by their keys. */
  list(table: Table, prefix?: string): Promise<readonly unknown[]>;
  /** Reads one row and writes what follows from it, all together or not at all, and nothing in between. */
  update(table: Table, key: string, follows: (row: unknown) => readonly Write[]): Promise<void>;
}

/** Where the browser keeps nothing: gone with the tab. */
export function memoryShelves(): Shelves {
  const rows = new Map<string, unknown>();
  const at = (table: Table, key: string) => `${table}/${key}`;
  return {
    get: async (table, key) => rows.get(at(table, key)),
    list: async (table, prefix = '') =>
      [...rows]
        .filter(([key]) => key.startsWith(at(table, prefix)))
        .sort(([a], [b]) => (a < b ? -1 : 1))
        .map(([, row]) => row),
    update: async (table, key, follows) => {
      for (const write of follows(rows.get(at(table, key)))) {
        if (write.value === undefined) rows.delete(at(write.table, write.key));
        else rows.set(at(write.table, write.key), structuredClone(write.value));
      }
    },
  };
}

/** Shelves that are still being opened. */
export const laterShelves = (opening: Promise<Shelves>): Shelves => ({
  get: async (...asked) => (await opening).get(...asked),
  list: async (...asked) => (await opening).list(...asked),
  update: async (...asked) => (await opening).update(...asked),
});
