import { pointToAircraft } from '../../engine/geometry/rotation';
import type { Vec3 } from '../../engine/geometry/types';
import { mirrorY } from '../../engine/geometry/vec3';
import type { PanelShape } from '../../engine/mass/shapes';
import type { Aircraft } from '../document/types';
import { type Piece, pieces } from './pieces';

/** Where along the outermost panel and its chord the mass goes. */
const AT = { span: 0.95, chord: 0.35 } as const;
/** How much of the panel's thickness there it may fill, and how long it may be, in chords. */
const FILLS = { thickness: 0.5, chord: 0.3 } as const;
/** A piece of some width keeps so far from the panel's end, mm. */
const AIR_MM = 2;
/** A piece of some width goes into no panel that rises by more than this: in a winglet it would stand across. */
const STEEP = 0.3;

/** Room for lead near the end of a wing: its middle, and how long and high a flat piece may be there, mm. */
export interface WingTip {
  readonly atMm: Vec3;
  readonly roomMm: { readonly lengthMm: number; readonly heightMm: number };
}

/** The place near the end of the outermost panel of the wing on one side that is wide enough; null without one. */
export function wingTip(aircraft: Aircraft, side: 'left' | 'right', widthMm = 0): WingTip | null {
  const wings = new Set(
    aircraft.structure.flatMap((piece) =>
      piece.kind === 'surface' && piece.role === 'wing' ? [piece.id] : [],
    ),
  );
  const tips = pieces(aircraft)
    .filter((piece) => wings.has(piece.sourceId) && piece.side === side)
    .flatMap((piece) => (piece.shape.kind === 'panel' ? (tipOf(piece, piece.shape, widthMm) ?? []) : []));
  return tips.sort((a, b) => Math.abs(b.atMm[1]) - Math.abs(a.atMm[1]))[0] ?? null;
}

function tipOf({ pose, mirrored }: Piece, panel: PanelShape, widthMm: number): WingTip | null {
  const endMm = panel.spanMm - widthMm / 2 - (widthMm > 0 ? AIR_MM : 0);
  const span = Math.min(AT.span, endMm / panel.spanMm);
  const isSteep = widthMm > 0 && Math.abs(panel.riseMm) > STEEP * panel.spanMm;
  if (isSteep || span * panel.spanMm < widthMm / 2) return null;
  const between = (root: number, tip: number) => root + span * (tip - root);
  const chordMm = between(panel.rootChordMm, panel.tipChordMm);
  const inPanelMm: Vec3 = [
    span * panel.sweepMm + AT.chord * chordMm,
    span * panel.spanMm,
    span * panel.riseMm,
  ];
  const atMm = pointToAircraft(pose, inPanelMm);
  const thickMm = chordMm * between(panel.rootThickness, panel.tipThickness);
  return {
    atMm: mirrored ? mirrorY(atMm) : atMm,
    roomMm: {
      lengthMm: Math.max(1, chordMm * FILLS.chord),
      heightMm: Math.max(1, thickMm * FILLS.thickness),
    },
  };
}
