/** An id made of a name that is not taken yet: the name in lower case, or `otherwise`, then with 2, 3, ... */
export function freeIdAmong(taken: ReadonlySet<string>, name: string, otherwise: string): string {
  const base =
    name
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '') || otherwise;
  if (!taken.has(base)) return base;
  let n = 2;
  while (taken.has(`${base}-${n}`)) n += 1;
  return `${base}-${n}`;
}
