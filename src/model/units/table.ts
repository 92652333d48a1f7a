/**
 * The one place where units are converted. The file, the engine and the API speak mm, g, ml, degrees and
 * seconds; a person may speak inches and ounces.
 *
 * 1 in = 25.4 mm, 1 ft = 304.8 mm and 1 lb = 0.453 592 37 kg exactly (international yard and pound
 * agreement of 1959; NIST Special Publication 811, appendix B); 1 oz = 1/16 lb; 1 gal (US) = 231 in³
 * = 128 fl oz (NIST Handbook 44, appendix C).
 */

export type UnitSystem = 'metric' | 'inch-ounce';

export type Quantity = 'length' | 'mass' | 'volume' | 'angle' | 'time' | 'ratio' | 'number';

const INCH_MM = 25.4;
const POUND_G = 453.59237;

export interface Unit {
  /** How it is written after a figure; none for a bare number. */
  readonly symbol: string;
  /** What one of it is in the file's unit. */
  readonly size: number;
  /** What a person may type for it, in lower case and with straight quotes. */
  readonly spellings: readonly string[];
}

const unit = (symbol: string, size: number, ...spellings: string[]): Unit => ({
  symbol,
  size,
  spellings: symbol ? [symbol.toLowerCase(), ...spellings] : spellings,
});

const mm = unit('mm', 1);
const inch = unit('in', INCH_MM, '"', 'inch', 'inches');
const gram = unit('g', 1, 'gram', 'grams');
const ounce = unit('oz', POUND_G / 16, 'ounce', 'ounces');
const ml = unit('ml', 1, 'cc', 'cm3');
const fluidOunce = unit('fl oz', (231 * INCH_MM ** 3) / 128 / 1000, 'floz', 'us fl oz');
const degree = unit('°', 1, 'deg', 'degree', 'degrees');
const second = unit('s', 1, 'sec', 'second', 'seconds');
const percent = unit('%', 1, 'pct');
const bare = unit('', 1);

/** Every unit that a person may type, by quantity. A ratio is in percent; a number has no unit. */
export const unitsOf: Readonly<Record<Quantity, readonly Unit[]>> = {
  length: [mm, unit('cm', 10), unit('m', 1000), inch, unit('ft', 12 * INCH_MM, "'", 'foot', 'feet')],
  mass: [gram, unit('kg', 1000), ounce, unit('lb', POUND_G, 'lbs')],
  volume: [ml, unit('l', 1000, 'litre', 'liter'), fluidOunce],
  angle: [degree],
  time: [second, unit('min', 60, 'minute', 'minutes'), unit('h', 3600)],
  ratio: [percent],
  number: [bare],
};

/** A unit of a quantity as a person may write it: "mm", "Oz.", "inches"; undefined where it is none. */
export const unitNamed = (text: string, quantity: Quantity): Unit | undefined => {
  const spelling = text.trim().toLowerCase().replaceAll('.', '');
  return spelling === ''
    ? undefined
    : unitsOf[quantity].find(({ spellings }) => spellings.includes(spelling));
};

const ownUnits: Readonly<Record<UnitSystem, Readonly<Record<Quantity, Unit>>>> = {
  metric: { length: mm, mass: gram, volume: ml, angle: degree, time: second, ratio: percent, number: bare },
  'inch-ounce': {
    length: inch,
    mass: ounce,
    volume: fluidOunce,
    angle: degree,
    time: second,
    ratio: percent,
    number: bare,
  },
};

/** The unit that a person of this system reads and types without saying so. */
export function ownUnit(quantity: Quantity, system: UnitSystem): Unit {
  return ownUnits[system][quantity];
}

/** A figure in the file's unit, in the person's. */
export function toOwnUnit(value: number, quantity: Quantity, system: UnitSystem): number {
  return value / ownUnit(quantity, system).size;
}

/** A figure in the person's unit, in the file's. */
export function fromOwnUnit(value: number, quantity: Quantity, system: UnitSystem): number {
  return value * ownUnit(quantity, system).size;
}
