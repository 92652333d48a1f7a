import { shapeBounds } from '../../engine/mass/shapeBounds';
import { shapeFault } from '../../engine/mass/shapeFault';
import { hullLoft } from '../airframe/pieces';
import type { StructurePiece } from '../document/types';

/** Farther than this a mesh's end may not lie from the end of the sections that were cut from it, mm. */
const SAME_END_MM = 1;

/** What is wrong between a hull's mesh and its sections, which stand for it where only a size is asked for. */
export function meshHullFault(item: StructurePiece): string | null {
  if (item.kind !== 'fuselage' || !item.mesh) return null;
  const { stationMm, shape } = item.mesh;
  const { minMm, maxMm } = shapeBounds(shape);
  const ends = [item.sections[0]?.stationMm ?? 0, item.sections.at(-1)?.stationMm ?? 0];
  const wanted = [stationMm + minMm[0], stationMm + maxMm[0]];
  const apart = ends.some((end, i) => Math.abs(end - (wanted[i] ?? end)) > SAME_END_MM);
  if (!apart) return shapeFault(hullLoft(item));
  return `the sections of a hull with a mesh run from its front to its rear: expected ${wanted.join(' to ')} mm, got ${ends.join(' to ')} mm.`;
}
