/** A place in a text as an editor counts it. */
export function placeOf(text: string, offset: number): string {
  let line = 1;
  let start = 0;
  for (let end = text.indexOf('\n'); end >= 0 && end < offset; end = text.indexOf('\n', start)) {
    line += 1;
    start = end + 1;
  }
  return `line ${line}, column ${offset - start + 1}`;
}
