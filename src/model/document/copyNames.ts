import type { Aircraft } from './types';

/** The names that are taken, in lower case, for people do not tell names apart by capitals. */
function namesAboard({ parts, tanks, structure, leads = [] }: Aircraft): Set<string> {
  return new Set([...parts, ...tanks, ...structure, ...leads].map(({ name }) => name.toLowerCase()));
}

/** The name itself where it is free, otherwise with the next number after it: "Pack 2", "Pack 3". */
export function freeName(aircraft: Aircraft, name: string): string {
  const taken = namesAboard(aircraft);
  if (!taken.has(name.toLowerCase())) return name;
  const [, stem = name, numeral] = /^(.*?)(?:\s+(\d{1,4}))?$/.exec(name) ?? [];
  let n = numeral === undefined ? 2 : Number(numeral) + 1;
  while (taken.has(`${stem} ${n}`.toLowerCase())) n += 1;
  return `${stem} ${n}`;
}

const OTHER: Readonly<Record<string, string>> = {
  right: 'left',
  left: 'right',
  Right: 'Left',
  Left: 'Right',
};

/**
 * What the twin on the other side is called: "Aileron servo, right" becomes "Aileron servo, left"; a name without a side
 * gets the twin's. `toRight`: the twin stands to the right of the plane of symmetry.
 */
export function twinName(aircraft: Aircraft, name: string, toRight: boolean): string {
  const sided = /\b(right|left)\b(?!.*\b(right|left)\b)/i;
  const swapped = name.replace(sided, (side) => OTHER[side] ?? side);
  return freeName(aircraft, swapped === name ? `${name}, ${toRight ? 'right' : 'left'}` : swapped);
}
