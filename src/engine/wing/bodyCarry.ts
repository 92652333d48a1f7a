import type { FuselageStation } from './fuselage';
import { fade, gapWeight } from './seamWeight';
import type { LiftingSurface } from './types';

/** Whether a surface's roots are joined through the body: said, or left to the geometry. */
export type JoinsBody = 'yes' | 'no' | 'byGeometry';

/** Places along the root chord at which the body is looked at. */
const SAMPLES = 32;
/** Of the body's half width and half height: up to here a fillet still closes the gap, from there on nothing does. */
const FILLET = 1.25;
const CLEAR = 2.5;
/** Shares of the root chord beside the body: enough for a whole joint, and none at all. */
const ENOUGH_CHORD = 0.6;
const LEAST_CHORD = 0;
/** Cant in degrees up to which a root carries its lift through a body, and from which it is a fin on it. */
const WING_CANT = 60;
const FIN_CANT = 80;

/**
 * How far the lift of a surface carries through the body to the other half, 0 … 1, by where its root stands
 * beside the body: the width, the height and the length of it that the root chord meets. Common practice, no
 * source for the limits; between them it changes smoothly. Sections front to rear, aircraft frame, mm.
 */
export function bodyCarry(surface: LiftingSurface, body: readonly FuselageStation[]): number {
  const [x, y, z] = surface.rootMm;
  const chordMm = surface.panels[0]?.rootChordMm ?? 0;
  let beside = 0;
  const [noseMm, tailMm] = [body[0]?.stationMm ?? 0, body.at(-1)?.stationMm ?? 0];
  const cellMm = chordMm / SAMPLES;
  for (let k = 0; k < SAMPLES; k++) {
    // A body may end bluntly: a cell of the chord counts by as much of it as the body reaches.
    const fromMm = Math.max(noseMm, x + k * cellMm);
    const toMm = Math.min(tailMm, x + (k + 1) * cellMm);
    const section = toMm > fromMm ? sectionAt(body, (fromMm + toMm) / 2) : null;
    if (!section) continue;
    const { widthMm, heightMm, waterlineMm } = section;
    beside +=
      ((toMm - fromMm) / cellMm) *
      within(Math.abs(y), widthMm / 2) *
      within(Math.abs(z - waterlineMm), heightMm / 2);
  }
  return (
    fade(beside / SAMPLES, ENOUGH_CHORD, LEAST_CHORD) * fade(Math.abs(surface.cantDeg), WING_CANT, FIN_CANT)
  );
}

/** How far a root is carried to the plane of symmetry, 0 … 1: as said, else by the body or a gap that hardly is one. */
export function rootCarry(
  surface: LiftingSurface,
  body: readonly FuselageStation[],
  joinsBody: JoinsBody,
): number {
  switch (joinsBody) {
    case 'yes':
      return 1;
    case 'no':
      return 0;
    case 'byGeometry':
      return Math.max(
        bodyCarry(surface, body),
        gapWeight(2 * Math.abs(surface.rootMm[1]), surface.panels[0]?.rootChordMm ?? 0),
      );
  }
}

/** 1 as far out as a fillet reaches, falling evenly to 0 well clear of a body that reaches `halfMm`. */
function within(distanceMm: number, halfMm: number): number {
  return halfMm > 0 ? Math.min(1, Math.max(0, (CLEAR - distanceMm / halfMm) / (CLEAR - FILLET))) : 0;
}

/** The body's section at a station, linear between those given; null ahead of the nose and behind the tail. */
function sectionAt(body: readonly FuselageStation[], stationMm: number): Required<FuselageStation> | null {
  const next = body.findIndex((rear) => rear.stationMm >= stationMm);
  const [front, rear] = [body[next - 1], body[next]];
  if (front === undefined || rear === undefined) return null;
  const share = (stationMm - front.stationMm) / (rear.stationMm - front.stationMm);
  const at = (of: (section: FuselageStation) => number) => of(front) + (of(rear) - of(front)) * share;
  return {
    stationMm,
    widthMm: at(({ widthMm }) => widthMm),
    heightMm: at(({ heightMm, widthMm }) => heightMm ?? widthMm),
    waterlineMm: at(({ waterlineMm }) => waterlineMm ?? 0),
  };
}
