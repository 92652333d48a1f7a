/** "Sand Martin" as `sand-martin`: what a file is called, without its ending. */
export function fileStem(name: string): string {
  const plain = name.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
  return plain.replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '') || 'aircraft';
}
