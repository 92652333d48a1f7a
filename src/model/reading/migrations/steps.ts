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
export const migrations: readonly Migration[] = [
  {
    from: 1,
    change:
      'the mark "typical" of a part becomes the source of its mass and sizes; what has a day on the scales is weighed; a tank likewise',
    step: (document) => ({
      ...document,
      ...eachOf(document, 'parts', sourced),
      ...eachOf(document, 'tanks', sourced),
    }),
  },
];

/** A list with each of its objects changed; nothing where there is no list, which the reader then finds fault with. */
function eachOf(document: Document, key: string, change: (item: Document) => Document): Document {
  const list = document[key];
  if (!Array.isArray(list)) return {};
  return { [key]: list.map((item: unknown) => (isObject(item) ? change(item) : item)) };
}

const isObject = (value: unknown): value is Document =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A mark that is neither true nor false stays where it was, for nobody here knows what was meant by it. */
function sourced(item: Document): Document {
  const { typical, ...rest } = item;
  if (typical === true) return { ...rest, massFrom: 'typical', sizeFrom: 'typical' };
  const plain = typical === false ? rest : item;
  return typeof item.weighedOn === 'string' ? { ...plain, massFrom: 'weighed' } : plain;
}
