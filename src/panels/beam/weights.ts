import { perObjects } from '../../engine/memory/memory';
import type { Body, BodyRole } from '../../model/airframe/bodies';
import type { Balance } from '../../model/balance/balance';

/** One weight as it stands on the beam. */
export interface Weight {
  /** Unique on the beam: the item's id, with its side where the two of a pair stand apart. */
  readonly key: string;
  readonly sourceId: string;
  readonly name: string;
  readonly group: Body['group'];
  readonly role: BodyRole;
  readonly massG: number;
  /** CG along the beam, mm from the datum. */
  readonly atMm: number;
}

/**
 * Everything aboard, lumped by item along the station axis (0), or by item and side along the buttline
 * axis (1). A tank weighs what it and its liquid weigh now. What has no mass, or no finite one, is left out.
 */
export const weightsAlong = perObjects((balance: Balance, axis: 0 | 1): readonly Weight[] => {
  const lumps = new Map<string, { body: Body; massG: number; momentGmm: number }>();
  for (const body of balance.bodies) {
    if (!body.mass.cgMm) continue;
    const key = axis === 1 && body.side !== 'centre' ? `${body.sourceId}.${body.side}` : body.sourceId;
    const lump = lumps.get(key) ?? { body, massG: 0, momentGmm: 0 };
    lump.massG += body.mass.massG;
    lump.momentGmm += body.mass.massG * body.mass.cgMm[axis];
    lumps.set(key, lump);
  }
  for (const { tankId, mass } of balance.liquids) {
    const lump = lumps.get(tankId);
    if (!lump || !mass.cgMm) continue;
    lump.massG += mass.massG;
    lump.momentGmm += mass.massG * mass.cgMm[axis];
  }
  return [...lumps]
    .map(([key, { body, massG, momentGmm }]) => ({
      key,
      sourceId: body.sourceId,
      name: body.name,
      group: body.group,
      role: body.role,
      massG,
      atMm: momentGmm / massG,
    }))
    .filter(({ massG, atMm }) => Number.isFinite(massG) && Number.isFinite(atMm));
});

/** A weight smaller than this could not be hit, px. */
const LEAST_PX = 7;

/** px² of drawn area for each gram, so that the heaviest of each kind just fits its side of the beam. */
export function areaPerGram(weights: readonly Weight[], partPx: number, structurePx: number): number {
  const heaviest = (structure: boolean) =>
    Math.max(1e-9, ...weights.filter((w) => (w.group === 'structure') === structure).map((w) => w.massG));
  return Math.min(partPx ** 2 / heaviest(false), structurePx ** 2 / heaviest(true));
}

/** The side of a weight's unit square, px, for an outline that fills the given share of it. */
export const weightSizePx = (massG: number, pxPerGram: number, filled: number): number =>
  Math.max(LEAST_PX, Math.sqrt((massG * pxPerGram) / filled));

/** How steeply the beam may tip, degrees. */
const MOST_TILT_DEG = 1.6;

/** Tilt of the beam, degrees, + down to the right, for a CG that lies so far beyond the band that is `widthMm` wide. */
export function tiltDeg(cgMm: number, band: { readonly forwardMm: number; readonly aftMm: number }): number {
  const outMm = cgMm < band.forwardMm ? cgMm - band.forwardMm : Math.max(0, cgMm - band.aftMm);
  if (outMm === 0) return 0;
  const share = outMm / Math.max(band.aftMm - band.forwardMm, 1);
  return Math.sign(share) * Math.min(MOST_TILT_DEG, 0.4 + Math.abs(share) * 0.8);
}
