import { carriedFigure, carryOver, exactly, type Figure, type Refusal, refusal } from './figure';

/** Standard gravity, mm/s² (3rd CGPM, 1901). */
const GRAVITY_MM_S2 = 9806.65;

/** How it was swung. Lengths in mm, the period in s for a full swing to and fro. */
export type Swing =
  /** Hung level by two parallel threads of one length, the CG midway between them, turning about the vertical. */
  | {
      readonly kind: 'bifilar';
      readonly massG: Figure;
      readonly spacingMm: Figure;
      readonly lengthMm: Figure;
      readonly periodS: Figure;
    }
  /** On a plate hung by three threads at one radius, the CG over its middle, turning about the vertical. */
  | {
      readonly kind: 'trifilar';
      readonly massG: Figure;
      readonly radiusMm: Figure;
      readonly lengthMm: Figure;
      readonly periodS: Figure;
      /** The plate, and the period of it alone; left out when nothing hangs there but the aircraft. */
      readonly plate?: { readonly massG: Figure; readonly periodS: Figure };
    }
  /** Swung as a whole about a level axis, the CG so far below it. */
  | {
      readonly kind: 'compound';
      readonly massG: Figure;
      readonly armMm: Figure;
      readonly periodS: Figure;
    };

export interface SwingOptions {
  /** How far it swung out to each side, degrees; swings are taken as small when left out. */
  readonly amplitudeDeg?: number;
  /** What the air that swings along adds, g·mm²: an estimate, taken off the answer. */
  readonly airGmm2?: Figure;
  readonly gravityMmS2?: number;
}

/** About the axis of the swing through the CG, g·mm². */
export interface SwungInertia {
  readonly ok: true;
  readonly inertiaGmm2: Figure;
  /** What was taken off for the air, g·mm²; 0 when nothing was. */
  readonly airGmm2: number;
}

const FOUR_PI2 = 4 * Math.PI ** 2;

/**
 * Moment of inertia from a swing:
 *
 *     bifilar    I = m·g·D²·T²/(16π²·h)     D the spacing, h the threads' length (AIAA 2007-6822, linear part)
 *     trifilar   I = m·g·r²·T²/(4π²·h)      the plate's own, swung alone, taken off
 *     compound   I = m·g·l·T²/(4π²) − m·l²  (NACA TN-1629, from memory); l large against the radius of gyration amplifies errors
 *
 * For small swings; with an amplitude a the period is first brought to that of a small swing, T/(1 + a²/16), a in radians (pendulum, and
 * threads long against their spacing). First-order errors of mass, lengths and period.
 */
export function inertiaFromSwing(swing: Swing, options: SwingOptions = {}): SwungInertia | Refusal {
  const { amplitudeDeg = 0, airGmm2 = exactly(0), gravityMmS2 = GRAVITY_MM_S2 } = options;
  if (!(amplitudeDeg >= 0 && amplitudeDeg <= 45)) {
    return refusal(`The swing must be 0° to 45° to each side, not ${amplitudeDeg}°.`);
  }
  const figures = figuresOf(swing);
  const missing = figures.find(([, { value }]) => !(value > 0 && Number.isFinite(value)));
  if (missing) return refusal(`${missing[0]}: expected more than 0, got ${missing[1].value}.`);
  const small = 1 + ((amplitudeDeg * Math.PI) / 180) ** 2 / 16;
  const of = (values: readonly number[]) => inertiaOf(swing.kind, values, small, gravityMmS2);
  const carried = carryOver([airGmm2, ...figures.map(([, figure]) => figure)], ([air = 0, ...values]) => [
    of(values) - air,
  ]);
  const inertiaGmm2 = carriedFigure(carried, 0);
  if (!(inertiaGmm2.value > 0)) {
    return refusal(
      'The figures leave no inertia: check the lengths, the period, whether full swings were counted, and the air taken off.',
    );
  }
  return { ok: true, inertiaGmm2, airGmm2: airGmm2.value };
}

function figuresOf(swing: Swing): readonly (readonly [string, Figure])[] {
  const { massG, periodS } = swing;
  switch (swing.kind) {
    case 'bifilar':
      return [
        ['Mass', massG],
        ['Period', periodS],
        ['Spacing of the threads', swing.spacingMm],
        ['Length of the threads', swing.lengthMm],
      ];
    case 'trifilar':
      return [
        ['Mass', massG],
        ['Period', periodS],
        ['Radius of the threads', swing.radiusMm],
        ['Length of the threads', swing.lengthMm],
        ...(swing.plate
          ? ([
              ['Mass of the plate', swing.plate.massG],
              ['Period of the plate alone', swing.plate.periodS],
            ] as const)
          : []),
      ];
    case 'compound':
      return [
        ['Mass', massG],
        ['Period', periodS],
        ['Axis to CG', swing.armMm],
      ];
  }
}

function inertiaOf(kind: Swing['kind'], of: readonly number[], small: number, g: number): number {
  const [m = 0, period = 0, a = 0, h = 1, plateG = 0, platePeriod = 0] = of;
  const t2 = (period / small) ** 2;
  switch (kind) {
    case 'bifilar':
      return (m * g * a * a * t2) / (4 * FOUR_PI2 * h);
    case 'trifilar':
      return (((m + plateG) * t2 - plateG * (platePeriod / small) ** 2) * g * a * a) / (FOUR_PI2 * h);
    case 'compound':
      return (m * g * a * t2) / FOUR_PI2 - m * a * a;
  }
}
