import {
  type FormatOptions,
  formatInertia,
  formatLength,
  formatMass,
  formatNumber,
  formatVolume,
  type Quantity as Measure,
  type UnitSystem,
} from '../units';
import type { Asked, AskedAs, Quantity } from './types';

/** How figures are written: the person's units, and the point that stations are read from, mm from the datum. */
export interface Reading {
  readonly units: UnitSystem;
  readonly fromMm: number;
}

/** What kind of figure a quantity is. */
export type FigureKind = 'station' | 'buttline' | 'mass' | 'margin' | 'inertia' | 'plusMinus' | 'volume';

export function kindOf(quantity: Quantity): FigureKind {
  switch (quantity.of) {
    case 'cgStation':
    case 'neutralPoint':
      return 'station';
    case 'cgButtline':
      return 'buttline';
    case 'margin':
      return 'margin';
    case 'mass':
      return 'mass';
    case 'inertia':
      return 'inertia';
    case 'cgPlusMinus':
      return 'plusMinus';
    case 'liquid':
      return 'volume';
    case 'partFor':
      return quantity.solve;
  }
}

/** How a figure of this kind converts on an axis, for labels of its own; null where every system writes it alike. */
export function measureOf({ quantity, as }: Pick<Asked, 'quantity' | 'as'>): Measure | null {
  if (as === 'times') return null;
  switch (kindOf(quantity)) {
    case 'station':
    case 'buttline':
    case 'plusMinus':
      return 'length';
    case 'mass':
      return 'mass';
    case 'volume':
      return 'volume';
    case 'margin':
    case 'inertia':
      return null;
  }
}

/** A figure of a question as it is written: "412.3 mm", "+12.0 mm" for a shift, "3.2 times". Stations from the point chosen. */
export function figureText(
  figure: number,
  { quantity, as }: { readonly quantity: Quantity; readonly as: AskedAs },
  { units, fromMm }: Reading,
): string {
  if (as === 'times') return `${formatNumber(figure, figure < 10 ? 2 : 1)} times`;
  const kind = kindOf(quantity);
  const away = kind === 'station' && as === 'value' ? figure - fromMm : figure;
  const signed = as === 'shift' || kind === 'buttline';
  const text = plainText(away, kind, units, { signed });
  return kind === 'plusMinus' && as === 'value' ? `±${text}` : text;
}

/** How far two figures lie apart, without a sign. */
export const differenceText = (
  figure: number,
  { quantity, as }: { readonly quantity: Quantity; readonly as: AskedAs },
  units: UnitSystem,
): string =>
  as === 'times'
    ? formatNumber(Math.abs(figure), 2)
    : plainText(Math.abs(figure), kindOf(quantity), units, {});

function plainText(figure: number, kind: FigureKind, units: UnitSystem, options: FormatOptions): string {
  switch (kind) {
    case 'station':
    case 'buttline':
    case 'plusMinus':
      return formatLength(figure, units, { fine: true, ...options });
    case 'mass':
      return formatMass(figure, units, options);
    case 'margin':
      return `${formatNumber(figure, 1, options.signed)} % MAC`;
    case 'inertia':
      return formatInertia(figure * 1e9, options);
    case 'volume':
      return formatVolume(figure, units, options);
  }
}

/** The words for a figure that is greater, and for one that is less, than another. */
export function sidesOf(quantity: Quantity, as: AskedAs): readonly [more: string, less: string] {
  if (as === 'times') return ['too high', 'too low'];
  switch (kindOf(quantity)) {
    case 'station':
      return ['too far aft', 'too far forward'];
    case 'buttline':
      return ['too far right', 'too far left'];
    case 'mass':
    case 'plusMinus':
    case 'volume':
      return ['too much', 'too little'];
    case 'margin':
    case 'inertia':
      return ['too high', 'too low'];
  }
}

/** Which way a figure moved, as it follows the figure: "12.0 mm aft". */
export function waysOf(quantity: Quantity): readonly [more: string, less: string] {
  switch (kindOf(quantity)) {
    case 'station':
      return ['aft', 'forward'];
    case 'buttline':
      return ['to the right', 'to the left'];
    case 'mass':
    case 'plusMinus':
    case 'volume':
    case 'margin':
    case 'inertia':
      return ['more', 'less'];
  }
}
