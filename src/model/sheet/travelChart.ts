import type { TravelPoint } from '../../engine/balance/travel';
import { formatLength } from '../units';
import type { Say } from '../words/say';
import type { KeepBetween } from './balancing';
import { type Drawing, line, type Shape, type Spot, say } from './drawing';

const HIGH_MM = 46;
const TOP_MM = 8;
const LEFT_MM = 22;

/** A round step that cuts a length into at most eight. */
export function roundStep(lengthMm: number): number {
  const ten = 10 ** Math.floor(Math.log10(lengthMm / 8));
  return [1, 2, 5, 10].map((step) => step * ten).find((step) => lengthMm / step <= 8) ?? 10 * ten;
}

/** CG station against what is left in the tanks, full at the top and dry at the bottom, with the band hatched. */
export function travelChart(
  travel: readonly TravelPoint[],
  band: KeepBetween | null,
  reading: Say,
  wideMm: number,
): Drawing | null {
  const stations = travel.map(({ cgMm }) => cgMm[0]);
  if (stations.length === 0 || !stations.every(Number.isFinite)) return null;
  const ends = band ? [...stations, band.fromMm, band.toMm] : stations;
  const [least, most] = [Math.min(...ends), Math.max(...ends)];
  const edge = Math.max(2, 0.12 * (most - least));
  const [from, to] = [least - edge, most + edge];
  const xOf = (mm: number) => LEFT_MM + ((mm - from) / (to - from)) * (wideMm - LEFT_MM - 4);
  const yOf = (fraction: number) => TOP_MM + (1 - fraction) * (HIGH_MM - TOP_MM - 12);
  const [top, bottom] = [TOP_MM - 3, HIGH_MM - 9];
  const curve: readonly Spot[] = travel.map(({ cgMm, fuelFraction }) => [xOf(cgMm[0]), yOf(fuelFraction)]);
  const shapes: Shape[] = [];
  if (band)
    shapes.push({
      kind: 'polygon',
      points: [
        [xOf(band.fromMm), top],
        [xOf(band.toMm), top],
        [xOf(band.toMm), bottom],
        [xOf(band.fromMm), bottom],
      ],
      line: 'chain',
      fill: 'hatch',
      of: 'band',
    });
  shapes.push(
    line([LEFT_MM, bottom], [wideMm - 4, bottom], 'thin'),
    ...axisTicks(from, to, reading, xOf, bottom),
  );
  if (curve.length > 1)
    shapes.push(
      { kind: 'polyline', points: curve, line: 'heavy', of: 'travel' },
      say([LEFT_MM - 2, yOf(1) + 0.9], 'full', { anchor: 'end' }),
      say([LEFT_MM - 2, yOf(0) + 0.9], 'dry', { anchor: 'end' }),
    );
  for (const spot of curve.length > 1 ? [curve[0]!, curve.at(-1)!] : curve)
    shapes.push({ kind: 'circle', at: spot, radiusMm: 1.1, line: 'thin', fill: 'paper' });
  return { id: 'travel', title: 'The CG over the burn, the band hatched', wideMm, highMm: HIGH_MM, shapes };
}

function axisTicks(
  from: number,
  to: number,
  reading: Say,
  xOf: (mm: number) => number,
  y: number,
): readonly Shape[] {
  const unitMm = reading.units === 'metric' ? 1 : 25.4;
  const step = roundStep((to - from) / unitMm) * unitMm;
  const first = Math.ceil((from - reading.fromMm) / step);
  const last = Math.floor((to - reading.fromMm) / step);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, at) => {
    const mm = (first + at) * step;
    const x = xOf(mm + reading.fromMm);
    return [
      line([x, y], [x, y + 1.6], 'thin'),
      say([x, y + 5], formatLength(mm, reading.units, { unit: false, fine: step < 1 }), { anchor: 'middle' }),
    ];
  }).flat();
}
