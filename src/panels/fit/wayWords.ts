import type { Vec3 } from '../../engine/geometry/types';
import { LEAST_SHOWN_MM } from '../../model/units';
import type { Readings } from '../readings';

const ways = [
  ['forward', 'aft'],
  ['left', 'right'],
  ['down', 'up'],
] as const;

/** "12.0 mm aft", "12.0 mm aft and 3.1 mm up": a move by its axes, the longest first. */
export function wayWords(by: Vec3, say: Readings): string {
  const words = ([0, 1, 2] as const)
    .filter((axis) => Math.abs(by[axis]) >= LEAST_SHOWN_MM)
    .sort((a, b) => Math.abs(by[b]) - Math.abs(by[a]))
    .map((axis) => `${say.lengthFine(Math.abs(by[axis]))} ${ways[axis][by[axis] > 0 ? 1 : 0]}`);
  const last = words.pop() ?? 'nothing';
  return words.length > 0 ? `${words.join(', ')} and ${last}` : last;
}
