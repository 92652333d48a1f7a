import { type Balance, balanceAt, LEVEL } from '../model/balance/balance';
import type { Aircraft } from '../model/document/types';
import { formatLength, formatNumber } from '../model/units';
import type { TableOptions } from './tableOptions';

const CELLS = 48;
const TENTHS = 10;

/** The CG travel from full to dry against the band, one line for every tenth of the usable liquid. */
export function travelStrip(
  aircraft: Aircraft,
  { travel, band, usableMl }: Balance,
  { system, from }: TableOptions,
): readonly string[] {
  if (usableMl === 0 || travel.length === 0) return [];
  const length = (mm: number) => formatLength(mm - (from?.positionMm[0] ?? 0), system, { fine: true });
  const stations = [...travel.map(({ cgMm }) => cgMm[0]), ...(band ? [band.forwardMm, band.aftMm] : [])];
  const least = Math.min(...stations);
  const most = Math.max(...stations);
  const cell = (mm: number) =>
    most > least ? Math.round(((mm - least) / (most - least)) * (CELLS - 1)) : Math.floor(CELLS / 2);
  const inBand = (index: number) => band && index >= cell(band.forwardMm) && index <= cell(band.aftMm);

  const line = (fuelFraction: number): string => {
    const stationMm = balanceAt(aircraft, { fuelFraction, down: LEVEL }).cgMm?.[0];
    if (stationMm === undefined) return '';
    const outside = band && (stationMm < band.forwardMm || stationMm > band.aftMm);
    const strip = Array.from({ length: CELLS }, (_, index): string => (inBand(index) ? '░' : ' '));
    strip[cell(stationMm)] = outside ? '○' : '●';
    return `${amount(fuelFraction).padStart(6)}  ${strip.join('')}  ${length(stationMm).padStart(11)}`;
  };
  const title = `CG travel as the ${aircraft.fuel?.use === 'dump' ? 'water is dumped' : 'fuel burns'}`;
  const limits = band ? `; ░ target band, ${length(band.forwardMm)} to ${length(band.aftMm)}` : '';
  return [title + limits, ...Array.from({ length: TENTHS + 1 }, (_, tenth) => line(1 - tenth / TENTHS))];
}

function amount(fraction: number): string {
  if (fraction === 1) return 'full';
  return fraction === 0 ? 'dry' : `${formatNumber(fraction * 100, 0)} %`;
}
