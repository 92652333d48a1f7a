import { standardUncertainty } from '../../engine/balance/uncertainty';
import { cosDeg, sinDeg } from '../../engine/geometry/angle';
import type { Vec3 } from '../../engine/geometry/types';
import { balancePoint } from '../../engine/weigh/balancePoint';
import type { Figure, Refusal } from '../../engine/weigh/figure';
import { weighOnScales } from '../../engine/weigh/weighOnScales';
import type { WholeMeasurement } from '../../engine/weigh/wholeResiduals';
import type { ScaleReading, WeighIn } from '../document/types';

/** What a weigh-in says; null where it says nothing. From the datum. */
export interface Weighed {
  readonly ok: true;
  readonly massG: Figure | null;
  readonly stationMm: Figure;
  readonly buttlineMm: Figure | null;
  /** The same for holding against the list. */
  readonly measurement: WholeMeasurement;
}

/** @param cgWaterlineMm how high the CG is thought to be: it has a say when the aircraft did not stand level */
export function weighedOf({ id, reading }: WeighIn, cgWaterlineMm: Figure): Weighed | Refusal {
  switch (reading.by) {
    case 'scales':
      return onScales(id, reading, cgWaterlineMm);
    case 'stand':
      return onStand(id, reading);
  }
}

type OfReading<K extends WeighIn['reading']['by']> = Extract<WeighIn['reading'], { readonly by: K }>;

function onScales(id: string, reading: OfReading<'scales'>, cgWaterlineMm: Figure): Weighed | Refusal {
  const { scales, resolutionG, tapeMm, pitchDeg, pitchPlusMinusDeg } = reading;
  const answer = weighOnScales({
    scales: scales.map((scale) => ({
      ...scale,
      resolutionG,
      supportSigmaMm: standardUncertainty(tapeMm),
    })),
    pitchDeg: { value: pitchDeg, sigma: standardUncertainty(pitchPlusMinusDeg) },
    cgWaterlineMm,
  });
  if (!answer.ok) return answer;
  const { massG, stationMm, buttlineMm, covariance } = answer;
  const rows = buttlineMm ? [0, 1, 2] : [0, 1];
  return {
    ok: true,
    massG,
    stationMm,
    buttlineMm,
    measurement: {
      id,
      quantities: (['mass', 'station', 'buttline'] as const).slice(0, rows.length),
      values: [massG.value, stationMm.value, ...(buttlineMm ? [buttlineMm.value] : [])],
      covariance: rows.map((row) => rows.map((column) => covariance[row]![column]!)),
    },
  };
}

function onStand(id: string, reading: OfReading<'stand'>): Weighed | Refusal {
  const { supportMm, plusMinusMm, addedG, addedAtMm, massG, massPlusMinusG } = reading;
  const sigmaMm = standardUncertainty(plusMinusMm);
  const mass = massG === null ? null : { value: massG, sigma: standardUncertainty(massPlusMinusG) };
  const answer = balancePoint({
    supportMm: { value: supportMm, sigma: sigmaMm },
    added: { massG: { value: addedG, sigma: 0.5 }, atMm: { value: addedAtMm, sigma: sigmaMm } },
    ...(mass && { massG: mass }),
  });
  if (!answer.ok) return answer;
  const { cgMm } = answer;
  const sigmas = [...(mass ? [mass.sigma] : []), cgMm.sigma];
  return {
    ok: true,
    massG: mass,
    stationMm: cgMm,
    buttlineMm: null,
    measurement: {
      id,
      quantities: mass ? ['mass', 'station'] : ['station'],
      values: [...(mass ? [mass.value] : []), cgMm.value],
      covariance: sigmas.map((sigma, row) => sigmas.map((_, column) => (row === column ? sigma ** 2 : 0))),
    },
  };
}

/**
 * What each scale should read, tare apart, g, by moments about the supports as they stand at the pitch. Null for more than three
 * scales, where statics alone does not say, and where the CG is thought to be nowhere.
 */
export function predictedLoads(
  supports: readonly Pick<ScaleReading, 'supportMm'>[],
  { massG, cgMm }: { readonly massG: number; readonly cgMm: Vec3 | null },
  pitchDeg: number,
): readonly number[] | null {
  if (!cgMm) return null;
  const flat = ([x, y, z]: Vec3): readonly [number, number] => [
    x * cosDeg(pitchDeg) + z * sinDeg(pitchDeg),
    y,
  ];
  const [a, b, c] = supports.map(({ supportMm }) => flat(supportMm));
  const g = flat(cgMm);
  if (supports.length === 2 && a && b) {
    const rear = (massG * (g[0] - a[0])) / (b[0] - a[0]);
    return [massG - rear, rear].every(Number.isFinite) ? [massG - rear, rear] : null;
  }
  if (supports.length !== 3 || !a || !b || !c) return null;
  const area = (p: readonly [number, number], q: readonly [number, number], r: readonly [number, number]) =>
    (q[0] - p[0]) * (r[1] - p[1]) - (r[0] - p[0]) * (q[1] - p[1]);
  const loads = [area(g, b, c), area(a, g, c), area(a, b, g)].map((part) => (massG * part) / area(a, b, c));
  return loads.every(Number.isFinite) ? loads : null;
}
