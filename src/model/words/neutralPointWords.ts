import type { Doubt, DoubtCause } from '../../engine/wing/neutralPointDoubt';
import { LINE_95 } from '../balance/certainty';
import type { GeometryNote } from '../stability/geometryNotes';

/** What each cause is, and which way it moves the neutral point; forward is the way that takes margin away. */
const CAUSES: Readonly<Record<DoubtCause, string>> = {
  method: 'The method itself: thin surfaces in a flow without friction. Either way.',
  refinement: 'The lattice, by what refining it last changed. Either way.',
  seams: 'Edges that count as joined in part: joined they move it one way, open the other.',
  fuselage: 'The fuselage’s part, by how far such sums and wind tunnels part. Either way.',
  fuselageNotCounted: 'The fuselage, which is not counted here. A nose ahead of the wing moves it forward.',
  otherHulls:
    'Pods, nacelles and hulls besides the main one, left out. Ahead of the wing they move it forward.',
  propeller:
    'A running propeller, left out. Ahead of the wing it moves it forward, under power; behind the wing, aft.',
  intake: 'The air that the intake turns, left out. Ahead of the CG it moves it forward.',
  tailEfficiency: 'Slow air at the tail, behind wing and fuselage, left out. It moves it forward.',
  flexibility: 'Tails, swept wings and pushrods that give under load, left out. They move it forward.',
  lowReynolds: 'Low Reynolds numbers: bubbles and early stalls at model speeds, left out. Either way.',
};

/** One share of the ±, 95 % like every ± of the screen, in words, with its size and where that is from. */
export function doubtWords({ cause, sigmaMm, basis }: Doubt, length: (mm: number) => string): string {
  return `${CAUSES[cause]} ± ${length(LINE_95 * sigmaMm)}, ${basis}.`;
}

/** How a piece of geometry was taken, in words. */
export function noteWords(note: GeometryNote, length: (mm: number) => string): string {
  switch (note.about) {
    case 'gap': {
      const between = note.withName ? `${note.name} and ${note.withName}` : `The halves of ${note.name}`;
      const taken =
        note.joined > 0
          ? `counted as joined to ${Math.round(100 * note.joined)} %`
          : 'computed as an open gap';
      return `${between} are ${length(note.gapMm)} apart: ${taken}.`;
    }
    case 'onePiece':
      return `${note.name} is one piece and counts as if it lay evenly to both sides.`;
    case 'leftOut':
      return `${note.name} is one piece that turns back on itself: it is left out, so its part in the neutral point is missing.`;
  }
}
