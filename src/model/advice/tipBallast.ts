import { stationShiftMm } from '../../engine/balance/ballast';
import { pointToAircraft } from '../../engine/geometry/rotation';
import type { Vec3 } from '../../engine/geometry/types';
import { mirrorY } from '../../engine/geometry/vec3';
import { stepsUp } from '../../engine/geometry/wholeSteps';
import type { PanelShape } from '../../engine/mass/shapes';
import { type Piece, pieces } from '../airframe/pieces';
import type { Aircraft, Part } from '../document/types';
import { lengthStepsMm, massStepG, massWords, shiftWords, stepped } from './figures';
import type { Goal } from './goal';
import type { Remedy } from './remedy';
import { remedyIf, type Workshop } from './trial';

/** Where along the outermost panel and its chord the mass goes. */
const AT = { span: 0.95, chord: 0.35 } as const;
/** How much of the panel's thickness there it may fill, and how long it may be, in chords. */
const FILLS = { thickness: 0.5, chord: 0.3 } as const;
/** Lead with a little air, g/ml. */
const LEAD_G_PER_ML = 10;
/** So many steps beyond the least are tried. */
const MORE_STEPS = 3;

/** The least mass at the light wing tip that levels the aircraft, where the lengthwise balance stands it. */
export function tipBallast(shop: Workshop, goal: Goal): Remedy | null {
  const right = shop.before.mostLateral ? shop.before.mostLateral.cgMm[1] < 0 : false;
  const tip = outermostPanel(shop.aircraft, right ? 'right' : 'left');
  if (!tip) return null;
  const [x, y, z] = tip.atMm;
  const step = massStepG(shop.spoken);
  for (const limits of [goal.reserved, goal]) {
    // At a tip beyond the limit each gram brings |y| − limit of moment more than it asks for.
    const limitMm = limits.highMm;
    const neededG = Math.max(
      ...shop.states.flatMap(({ balance }) =>
        balance.travel.map(
          ({ massG, cgMm }) => (massG * ((right ? -cgMm[1] : cgMm[1]) - limitMm)) / (Math.abs(y) - limitMm),
        ),
      ),
    );
    const least = Math.max(1, stepsUp(neededG / step));
    for (let count = least; count < least + MORE_STEPS; count += 1) {
      const massG = stepped(count, step);
      const part = {
        ...LEAD,
        name: `Tip ballast, ${right ? 'right' : 'left'}`,
        shape: leadIn(tip, massG),
        massG,
      };
      const remedy = remedyIf(shop, goal, {
        kind: 'tip-ballast',
        edits: [{ do: 'add', part: { ...part, positionMm: [x, y, z] }, into: 'wing' }],
        words: `Add ${massWords(massG, shop.spoken)} at the ${right ? 'right' : 'left'} wing tip${alongWords(shop, massG, tip.atMm)}`,
      });
      if (remedy) return remedy;
    }
  }
  return null;
}

/** What it does along besides, as of a swept tip: ", which moves the CG 0.6 mm aft"; aft rounded up, forward down. */
function alongWords({ before: { mostLateral }, spoken }: Workshop, addedG: number, atMm: Vec3): string {
  if (!mostLateral) return '';
  const shiftMm = stationShiftMm(mostLateral.massG, mostLateral.cgMm, addedG, atMm);
  const [, step] = lengthStepsMm(spoken);
  const count = stepsUp(shiftMm / step);
  return count === 0 ? '' : `, which moves the CG ${shiftWords(stepped(count, step), 0, true, spoken)}`;
}

const LEAD = { role: 'ballast', yawDeg: 0, pitchDeg: 0, rollDeg: 0 } as const;

interface Tip {
  readonly atMm: Vec3;
  readonly chordMm: number;
  readonly thickMm: number;
}

/** The place near the end of the wing's outermost panel on one side; null without a wing there. */
function outermostPanel(aircraft: Aircraft, side: 'left' | 'right'): Tip | null {
  const wings = new Set(
    aircraft.structure.flatMap((piece) =>
      piece.kind === 'surface' && piece.role === 'wing' ? [piece.id] : [],
    ),
  );
  const tips = pieces(aircraft)
    .filter((piece) => wings.has(piece.sourceId) && piece.side === side)
    .flatMap((piece) => (piece.shape.kind === 'panel' ? [tipOf(piece, piece.shape)] : []));
  return tips.sort((a, b) => Math.abs(b.atMm[1]) - Math.abs(a.atMm[1]))[0] ?? null;
}

function tipOf({ pose, mirrored }: Piece, panel: PanelShape): Tip {
  const between = (root: number, tip: number) => root + AT.span * (tip - root);
  const chordMm = between(panel.rootChordMm, panel.tipChordMm);
  const inPanelMm: Vec3 = [
    AT.span * panel.sweepMm + AT.chord * chordMm,
    AT.span * panel.spanMm,
    AT.span * panel.riseMm,
  ];
  const atMm = pointToAircraft(pose, inPanelMm);
  return {
    atMm: mirrored ? mirrorY(atMm) : atMm,
    chordMm,
    thickMm: chordMm * between(panel.rootThickness, panel.tipThickness),
  };
}

/** A flat piece of lead as thick as there is room for. */
function leadIn({ chordMm, thickMm }: Tip, massG: number): Part['shape'] {
  const heightMm = Math.max(1, thickMm * FILLS.thickness);
  const lengthMm = Math.max(1, chordMm * FILLS.chord);
  const widthMm = Math.max(0.5, ((massG / LEAD_G_PER_ML) * 1000) / heightMm / lengthMm);
  return { kind: 'box', lengthMm, widthMm, heightMm };
}
