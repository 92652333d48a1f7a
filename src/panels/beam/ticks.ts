import { formatNumber, ownUnit, type UnitSystem } from '../../model/units';
import { type Axis, axisToPx, pxToAxis } from '../../store/axisStore';

export interface Tick {
  readonly xPx: number;
  /** Major ticks carry a numeral, in the person's unit from their reference point. */
  readonly numeral: string | null;
}

/** The least distance between numerals, px. */
const APART_PX = 62;

/** 1, 2 or 5 times a power of ten, at least `atLeast`; with how many parts it is divided into. */
export function roundStep(atLeast: number): { readonly step: number; readonly parts: number } {
  const power = 10 ** Math.floor(Math.log10(atLeast));
  for (const [times, parts] of [
    [1, 5],
    [2, 4],
    [5, 5],
  ] as const) {
    if (times * power >= atLeast * (1 - 1e-9)) return { step: times * power, parts };
  }
  return { step: 10 * power, parts: 5 };
}

/** The ticks of a rule along an axis, numbered from `fromMm`; unsigned where words tell the sides apart. */
export function rulerTicks(
  axis: Axis,
  widthPx: number,
  units: UnitSystem,
  fromMm: number,
  signed = true,
): Tick[] {
  if (!(widthPx > 0)) return [];
  const unitMm = ownUnit('length', units).size;
  const { step, parts } = roundStep((APART_PX * Math.abs(axis.mmPerPx)) / unitMm);
  const ends = [pxToAxis(axis, 0), pxToAxis(axis, widthPx)].map((mm) => (mm - fromMm) / unitMm);
  const minor = step / parts;
  const places = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  const ticks: Tick[] = [];
  const last = Math.floor(Math.max(...ends) / minor);
  for (let n = Math.ceil(Math.min(...ends) / minor); n <= last; n += 1) {
    const xPx = axisToPx(axis, fromMm + n * minor * unitMm);
    ticks.push({
      xPx,
      numeral: n % parts === 0 ? formatNumber(signed ? n * minor : Math.abs(n) * minor, places) : null,
    });
  }
  return ticks;
}
