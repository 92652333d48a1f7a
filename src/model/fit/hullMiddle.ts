import type { Aircraft, StructurePiece } from '../document/types';

/** A hull where a station cuts it: the middle of its section and how large it is, mm. */
export interface HullMiddle {
  readonly buttlineMm: number;
  readonly waterlineMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

type Fuselage = Extract<StructurePiece, { kind: 'fuselage' }>;

/** The largest hull at a station, linear between its sections; null where there is none. Of a pair the right-hand one. */
export function hullMiddleAt({ structure }: Aircraft, stationMm: number): HullMiddle | null {
  const cuts = structure.flatMap((piece) => {
    const cut = piece.kind === 'fuselage' ? middleAt(piece, stationMm) : null;
    return cut ? [cut] : [];
  });
  return cuts.sort((a, b) => b.widthMm * b.heightMm - a.widthMm * a.heightMm)[0] ?? null;
}

function middleAt({ sections, buttlineMm }: Fuselage, stationMm: number): HullMiddle | null {
  const next = sections.findIndex((section) => section.stationMm >= stationMm);
  const [fore, aft] = [sections[Math.max(0, next - 1)], sections[next]];
  if (!fore || !aft || stationMm < fore.stationMm) return null;
  const lengthMm = aft.stationMm - fore.stationMm;
  const share = lengthMm > 0 ? (stationMm - fore.stationMm) / lengthMm : 0;
  const between = (key: 'widthMm' | 'heightMm' | 'waterlineMm') => fore[key] + share * (aft[key] - fore[key]);
  return {
    buttlineMm,
    waterlineMm: between('waterlineMm'),
    widthMm: between('widthMm'),
    heightMm: between('heightMm'),
  };
}

/** Where the body ends: the aftmost station of hulls and booms, and the waterlines of its middle and its top, mm. */
export function bodyEnd({ structure }: Aircraft): {
  readonly stationMm: number;
  readonly waterlineMm: number;
  readonly topMm: number;
} | null {
  const ends = structure.flatMap((piece) => {
    if (piece.kind === 'boom') {
      const [stationMm, , waterlineMm] = piece.rearMm;
      return [{ stationMm, waterlineMm, topMm: waterlineMm + piece.rearDiameterMm / 2 }];
    }
    const last = piece.kind === 'fuselage' ? piece.sections.at(-1) : undefined;
    if (!last) return [];
    const { stationMm, waterlineMm, heightMm } = last;
    return [{ stationMm, waterlineMm, topMm: waterlineMm + heightMm / 2 }];
  });
  return ends.sort((a, b) => b.stationMm - a.stationMm)[0] ?? null;
}
