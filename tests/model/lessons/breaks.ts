// biome-ignore lint/suspicious/noExplicitAny: tests put wrong things in wrong places.
export type Json = any;

/** What is wrong, in which lesson, how it gets wrong, and the sentence that has to tell it. */
export type Break = readonly [what: string, file: string, breakIt: (json: Json) => void, sentence: RegExp];

const ownerOf = (json: Json, path: string): [Json, string] => {
  const keys = path.split('.');
  const last = keys.pop()!;
  return [keys.reduce((value, key) => value[key], json), last];
};

/** Puts a value in the place of another. */
export const set = (path: string, value: unknown) => (json: Json) => {
  const [owner, key] = ownerOf(json, path);
  owner[key] = value;
};

/** Leaves a key out. */
export const drop = (path: string) => (json: Json) => {
  const [owner, key] = ownerOf(json, path);
  delete owner[key];
};
