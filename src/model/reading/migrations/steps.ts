/** A whole document of some version: nothing is known of it but that it is an object. */
export type Document = Readonly<Record<string, unknown>>;

/** One step from a version to the next. Pure: it gives a new document and leaves the one it got alone. */
export interface Migration {
  readonly from: number;
  /** What changes, for whoever reads the list. */
  readonly change: string;
  readonly step: (document: Document) => Document;
}

/**
 * Every step there has been, in order, one for each version before today's. A step that has been
 * released is never edited; a copy of a file of each version is kept with the tests.
 */
export const migrations: readonly Migration[] = [];
