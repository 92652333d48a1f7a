import { ownUnit, type Quantity, toOwnUnit, type UnitSystem } from './table';

/** Narrow no-break space: it groups thousands and stands before a unit. */
const THIN = '\u202f';
const MINUS = '\u2212';

export interface FormatOptions {
  /** One decimal more than usual in mm and g. */
  readonly fine?: boolean;
  /** A plus sign before what is more than 0. */
  readonly signed?: boolean;
  /** False leaves the unit out, for a column that names it in its head. */
  readonly unit?: boolean;
}

/** Decimals are fixed by quantity and system, so that a figure's width does not change while it runs. */
const decimals: Readonly<Record<UnitSystem, Readonly<Record<Quantity, number>>>> = {
  metric: { length: 0, mass: 0, volume: 0, angle: 1, time: 0, ratio: 0, number: 2 },
  'inch-ounce': { length: 2, mass: 2, volume: 2, angle: 1, time: 0, ratio: 0, number: 2 },
};

/** A length below this reads 0.0 mm, and so is not worth a word, mm. */
export const LEAST_SHOWN_MM = 0.05;

/** The decimals that a quantity is shown with. */
export const shownPlaces = (quantity: Quantity, system: UnitSystem, fine = false): number =>
  decimals[system][quantity] + (fine && system === 'metric' ? 1 : 0);

/** mm as "603 mm" or "23.74 in". */
export const formatLength = (lengthMm: number, system: UnitSystem, options?: FormatOptions) =>
  formatQuantity(lengthMm, 'length', system, options);

/** A small shift in mm as "+0.34 mm" or "+0.013 in". */
export function formatShift(shiftMm: number, system: UnitSystem): string {
  const figure = formatNumber(toOwnUnit(shiftMm, 'length', system), system === 'metric' ? 2 : 3, true);
  return withUnit(figure, ownUnit('length', system).symbol, {});
}

/** g as "236 g" or "8.32 oz". */
export const formatMass = (massG: number, system: UnitSystem, options?: FormatOptions) =>
  formatQuantity(massG, 'mass', system, options);

/** ml as "500 ml" or "16.91 fl oz" (US). */
export const formatVolume = (volumeMl: number, system: UnitSystem, options?: FormatOptions) =>
  formatQuantity(volumeMl, 'volume', system, options);

/** mm² as "85.2 dm²" or "1321 in²". */
export function formatArea(areaMm2: number, system: UnitSystem, options: FormatOptions = {}): string {
  const inUnit = ownUnit('length', system);
  return system === 'metric'
    ? withUnit(formatNumber(areaMm2 / 1e4, 1), 'dm²', options)
    : withUnit(formatNumber(areaMm2 / inUnit.size ** 2, 0), `${inUnit.symbol}²`, options);
}

/** Degrees as "2.5°". */
export const formatAngle = (angleDeg: number, options?: FormatOptions) =>
  formatQuantity(angleDeg, 'angle', 'metric', options);

/** g·mm² as "0.4120 kg·m²", whatever the system. */
export function formatInertia(inertiaGmm2: number, options: FormatOptions = {}): string {
  return withUnit(formatNumber(inertiaGmm2 * 1e-9, 4, options.signed), 'kg·m²', options);
}

/** g·mm as "78 588 g·mm" or "109.13 oz·in". */
export function formatMoment(momentGmm: number, system: UnitSystem, options: FormatOptions = {}): string {
  const mass = ownUnit('mass', system);
  const length = ownUnit('length', system);
  const inUnit = momentGmm / mass.size / length.size;
  return withUnit(
    formatNumber(inUnit, decimals[system].length, options.signed),
    `${mass.symbol}·${length.symbol}`,
    options,
  );
}

/** Seconds as "11 min 40 s", "40 s" or "1 h 05 min". */
export function formatTime(timeS: number): string {
  const whole = Math.round(Math.abs(timeS));
  const sign = timeS < 0 && whole > 0 ? MINUS : '';
  const [h, min, s] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  const two = (n: number) => String(n).padStart(2, '0');
  if (h > 0) return `${sign}${h}${THIN}h ${two(min)}${THIN}min`;
  return min > 0 ? `${sign}${min}${THIN}min ${two(s)}${THIN}s` : `${sign}${s}${THIN}s`;
}

/** Any quantity of the file in the person's unit. */
export function formatQuantity(
  value: number,
  quantity: Quantity,
  system: UnitSystem,
  options: FormatOptions = {},
): string {
  const places = shownPlaces(quantity, system, options.fine);
  const figure = formatNumber(toOwnUnit(value, quantity, system), places, options.signed);
  return withUnit(figure, ownUnit(quantity, system).symbol, options);
}

/** A number with fixed decimals, a true minus sign, and thousands set apart from 10 000 on. */
export function formatNumber(value: number, places: number, signed = false): string {
  if (!Number.isFinite(value)) return '–';
  const [whole = '0', fraction] = Math.abs(value).toFixed(places).split('.');
  const grouped = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, THIN) : whole;
  const digits = fraction === undefined ? grouped : `${grouped}.${fraction}`;
  if (!/[1-9]/.test(digits)) return digits;
  if (value < 0) return MINUS + digits;
  return signed ? `+${digits}` : digits;
}

function withUnit(figure: string, symbol: string, { unit = true }: FormatOptions): string {
  if (!unit || symbol === '') return figure;
  return symbol === '°' ? figure + symbol : figure + THIN + symbol;
}
