import type { ArrangementId } from './arrangements';

/** What the airframe is built of. */
export const constructions = ['foam', 'balsa', 'glass', 'carbon'] as const;
export type Construction = (typeof constructions)[number];

export const motors = ['electric', 'petrol'] as const;
export type MotorKind = (typeof motors)[number];

/** Tail volumes: S_h·l_h/(S·c̄) and S_v·l_v/(S·b), arms from quarter MAC to quarter MAC. */
export interface TailVolumes {
  readonly horizontal: number;
  readonly vertical: number;
}

/**
 * Raymer, Aircraft Design, table 6.4 (from memory): sailplane 0.50 and 0.02, homebuilt 0.50 and 0.04, general aviation
 * with one engine 0.70 and 0.04, with two 0.80 and 0.07; a T-tail takes 5 % less of both. Drela, Basic Aircraft Design
 * Rules, MIT Unified Engineering (from memory): 0.30 to 0.60 and 0.02 to 0.05, which holds for models and keeps the
 * twin's below the full-size figure.
 */
export function tailVolumes(id: ArrangementId): TailVolumes {
  switch (id) {
    case 'powered-glider':
      return { horizontal: 0.5, vertical: 0.022 };
    case 'twin-engined':
      return { horizontal: 0.58, vertical: 0.045 };
    case 't-tail':
      return { horizontal: 0.95 * 0.5, vertical: 0.95 * 0.04 };
    case 'delta':
      return { horizontal: 0, vertical: 0.022 };
    // Fins at the tips of a swept wing have no arm to speak of; what is flown is below both books: common practice.
    case 'flying-wing':
    case 'canard':
      return { horizontal: 0, vertical: 0.012 };
    case 'low-wing':
    case 'mid-wing':
    case 'high-wing':
    case 'v-tail':
    case 'twin-boom':
    case 'three-surface':
    case 'biplane':
      return { horizontal: 0.5, vertical: 0.04 };
  }
}

/** Aspect ratio and taper of tails: Raymer, Aircraft Design, tables 4.3 (3 to 5; fins 1.3 to 2.0), from memory. */
export const tailplaneShape = { aspectRatio: 4.5, taper: 0.75 } as const;
export const foreplaneShape = { aspectRatio: 6, taper: 0.75 } as const;
export const finShape = { aspectRatio: 1.5, taper: 0.55 } as const;

/** Maximum thickness of tails, % of the chord: common practice, no source. */
export const TAIL_THICKNESS_PCT = 8;

/** The root of the wing area, mm, that the skins below are given for; a skin grows with the size of the aircraft. */
export const SKIN_AT_MM = 600;

/** Skins of an airframe, g/m² of outer surface, glue, ribs, spars and fittings spread over it. */
export interface Skins {
  readonly wing: number;
  readonly tail: number;
  readonly body: number;
}

/** A layer so thick of a material, g/m². */
const layer = (thickMm: number, kgPerM3: number) => thickMm * kgPerM3;

/**
 * Densities, kg/m³: balsa 160 (Forest Products Laboratory, Wood Handbook, table of woods; from memory), expanded
 * polypropylene and polyolefin foam 30 (sold as 20 to 45; from memory), glass and carbon laminate in epoxy 1800 and
 * 1550 (from memory); covering film 75 g/m². The thicknesses stand for all that is inside: common practice, no source.
 */
export const skins: Readonly<Record<Construction, Skins>> = {
  foam: { wing: layer(16, 30), tail: layer(9, 30), body: layer(22, 30) },
  balsa: { wing: layer(2.2, 160) + 75, tail: layer(1.3, 160) + 75, body: layer(4.4, 160) + 75 },
  glass: { wing: layer(0.3, 1800), tail: layer(0.2, 1800), body: layer(0.48, 1800) },
  carbon: { wing: layer(0.27, 1550), tail: layer(0.17, 1550), body: layer(0.42, 1550) },
};

/** Undercarriage, of the rest of the airframe: common practice, no source. */
export const LEGS_SHARE = { main: 0.07, third: 0.02 } as const;

/** What is carried, of the mass ready to fly: common practice, no source. */
export interface Outfit {
  readonly motor: number;
  readonly controller: number;
  readonly propeller: number;
  readonly spinner: number;
  readonly pack: number;
  readonly receiver: number;
  /** All of them together. */
  readonly servos: number;
  /** Empty, and what is in it when it is full. */
  readonly tank: number;
  readonly fuel: number;
}

/** By motor and kind. An engine's controller is its ignition unit, its pack that of receiver and ignition. */
export function outfitShares(id: ArrangementId, motor: MotorKind): Outfit {
  if (motor === 'petrol') {
    return {
      motor: 0.15,
      controller: 0.02,
      propeller: 0.025,
      spinner: 0.008,
      pack: 0.035,
      receiver: 0.006,
      servos: 0.05,
      tank: 0.01,
      fuel: 0.07,
    };
  }
  const glider = id === 'powered-glider';
  return {
    motor: glider ? 0.07 : 0.09,
    controller: 0.025,
    propeller: 0.015,
    spinner: 0.006,
    pack: glider ? 0.14 : 0.2,
    receiver: 0.008,
    servos: 0.05,
    tank: 0,
    fuel: 0,
  };
}

/** All shares together. */
export const carriedShare = (outfit: Outfit): number =>
  Object.values(outfit).reduce((sum: number, share: number) => sum + share, 0);

/** A propeller's diameter, of the root of the wing area: common practice, no source. */
export const PROPELLER_SHARE = 0.42;

/** Petrol with oil, g/ml, as commonly printed on the can. */
export const PETROL_G_PER_ML = 0.74;

/** Gap of a biplane and its stagger, of the chord: common practice, no source. */
export const BIPLANE = { gap: 1.05, stagger: 0.2 } as const;
