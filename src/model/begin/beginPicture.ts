import type { Corner } from '../../engine/geometry/polygon';
import { perObject } from '../../engine/memory/memory';
import type { Aircraft, Surface } from '../document/types';
import type { Outline } from '../weigh/outlines';
import { seenFromAbove } from '../weigh/seenFromAbove';
import { type Arrangement, arrangementOf } from './arrangements';
import { shapedAircraft } from './beginAircraft';
import type { Tape, TapeField } from './tape';

/** One figure of the tape as it is measured, seen from above: [station, buttline] of its two ends, mm. */
export interface Dimension {
  readonly ends: readonly [Corner, Corner];
  /** How far to the side of what is measured the line is drawn, and which way it runs, mm. */
  readonly drawn: readonly [Corner, Corner];
}

/** The outlines of an arrangement as it is before anything is typed, seen from above. */
export const arrangementPicture = perObject(({ id }: Arrangement): readonly Outline[] =>
  seenFromAbove(
    shapedAircraft({
      arrangement: id,
      typed: {},
      construction: 'balsa',
      motor: 'electric',
      massG: null,
      kit: null,
      band: null,
    }),
  ),
);

/** The surface that tail span and tail chord are taken from: the tail, or the surface ahead where there is none. */
export function tailSurface({ structure }: Pick<Aircraft, 'structure'>): Surface | null {
  const surfaces = structure.filter((piece) => piece.kind === 'surface');
  const named = ({ role }: Surface) => role === 'tailplane' || role === 'v-tail';
  return surfaces.find(named) ?? surfaces.find(({ role }) => role === 'canard') ?? null;
}

/** Where each figure of a tape is measured on the aircraft that it makes, seen from above. */
export function dimensionsOf(
  arrangement: Arrangement['id'],
  tape: Tape,
  aircraft: Pick<Aircraft, 'structure'>,
): Partial<Record<TapeField, Dimension>> {
  const half = tape.spanMm / 2;
  const off = 0.05 * Math.max(tape.spanMm, tape.lengthMm);
  const tipAt = tape.wingAtMm + tape.sweepMm;
  const inside = Math.min(0.11 * tape.spanMm, 0.6 * half);
  const along = (fromMm: number, toMm: number, at: number, drawnAt: number): Dimension => ({
    ends: [
      [fromMm, at],
      [toMm, at],
    ],
    drawn: [
      [fromMm, drawnAt],
      [toMm, drawnAt],
    ],
  });
  const across = (y: number, station: number, drawnAt: number): Dimension => ({
    ends: [
      [station, -y],
      [station, y],
    ],
    drawn: [
      [drawnAt, -y],
      [drawnAt, y],
    ],
  });
  const span = across(half, tipAt, Math.min(0, tipAt) - off);
  return {
    spanMm: span,
    rootChordMm: along(tape.wingAtMm, tape.wingAtMm + tape.rootChordMm, 0, inside),
    tipChordMm: along(tipAt, tipAt + tape.tipChordMm, half, half + off),
    sweepMm: along(tape.wingAtMm, tipAt, half, half + off),
    lengthMm: along(0, tape.lengthMm, 0, -half - off),
    wingAtMm: along(0, tape.wingAtMm, 0, inside),
    ...tailDimensions(arrangement, tape, tailSurface(aircraft), off),
  };
}

/** A distance along the body from station to station, mm, drawn beside it. */
export function alongDimension(fromMm: number, toMm: number, { spanMm }: Pick<Tape, 'spanMm'>): Dimension {
  const at = 0.11 * spanMm;
  return {
    ends: [
      [fromMm, 0],
      [toMm, 0],
    ],
    drawn: [
      [fromMm, at],
      [toMm, at],
    ],
  };
}

function tailDimensions(id: Arrangement['id'], tape: Tape, tail: Surface | null, off: number) {
  const [panel] = tail?.panels ?? [];
  if (!tail || !panel) return {};
  const ahead = arrangementOf(id).tail === 'none';
  const y = tape.tailSpanMm / 2;
  const tipAt = tail.rootMm[0] + panel.sweepMm;
  const middle = tail.rootMm[0] + panel.sweepMm / 2;
  const station = ahead ? -off : tape.lengthMm + off;
  const tailSpanMm: Dimension = {
    ends: [
      [tipAt, -y],
      [tipAt, y],
    ],
    drawn: [
      [station, -y],
      [station, y],
    ],
  };
  const tailChordMm: Dimension = {
    ends: [
      [middle, y / 2],
      [middle + tape.tailChordMm, y / 2],
    ],
    drawn: [
      [middle, y + off],
      [middle + tape.tailChordMm, y + off],
    ],
  };
  return { tailSpanMm, tailChordMm };
}
