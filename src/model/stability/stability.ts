import { perObjects } from '../../engine/memory/memory';
import type { FuselageStation } from '../../engine/wing/fuselage';
import type { MarginRange } from '../../engine/wing/margin';
import type { Doubt } from '../../engine/wing/neutralPointDoubt';
import type { StripLoad } from '../../engine/wing/spanLoading';
import type { LiftingSurface } from '../../engine/wing/types';
import type { Aircraft } from '../document/types';
import { wingPlanform } from './band';
import type { GeometryNote } from './geometryNotes';
import { hullsOf, rootCarries } from './hull';
import { liftingSurfaces } from './liftingSurfaces';

/** What the estimate is asked for, with what the file leaves out put in. */
export interface StabilitySettings {
  /** The static margin wanted, % MAC; null when none is given. */
  readonly marginRange: MarginRange | null;
  readonly fuselage: boolean;
}

/** The settings of an aircraft: no margin wanted and the fuselage counted, unless the file says otherwise. */
export function stabilitySettings({ stability }: Aircraft): StabilitySettings {
  return { marginRange: stability?.marginRange ?? null, fuselage: stability?.fuselage ?? true };
}

/** The aircraft with some of the settings changed. */
export function changeStability(
  aircraft: Aircraft,
  change: Partial<NonNullable<Aircraft['stability']>>,
): Aircraft {
  return { ...aircraft, stability: { ...aircraft.stability, ...change } };
}

/** The part of the wing that % MAC is read on, in figures; mm. */
export interface MacFigures {
  readonly macMm: number;
  readonly lemacMm: number;
  readonly macButtlineMm: number;
}

/** Everything that the estimate depends on; plain, so that it can be sent to a worker. */
export interface StabilityInput {
  readonly surfaces: readonly LiftingSurface[];
  /** How far each surface's root is carried to the middle, 0 … 1, by id. */
  readonly carries: Readonly<Record<string, number>>;
  /** The MAC that every reading is on; null where there is none, and then the largest surface's serves. */
  readonly mac: MacFigures | null;
  /** The main hull, nose to tail; null without one. */
  readonly hull: readonly FuselageStation[] | null;
  readonly countFuselage: boolean;
  /** Hulls besides the main one. */
  readonly otherHulls: number;
  readonly power: 'propeller' | 'turbine' | 'none';
}

/** An estimate, never a measurement. Stations in mm aft of the datum, angles in radians; plain data. */
export interface StabilityEstimate {
  readonly neutralPointMm: number;
  /** One standard deviation of the neutral point: all doubts together, mm. */
  readonly neutralPointSigmaMm: number;
  /** What the ± is made of, and which way each tends to move the point. */
  readonly doubts: readonly Doubt[];
  /** The MAC that % MAC is read on; the same as `wingPlanform` gives. */
  readonly macMm: number;
  readonly lemacMm: number;
  readonly macButtlineMm: number;
  /** The neutral point in % MAC. */
  readonly pctMac: number;
  readonly clAlphaPerRad: number;
  /** How far the fuselage moves the neutral point, mm; forward is negative, 0 when it is not counted. */
  readonly fuselageShiftMm: number;
  /** How far the last refinement moved it, % MAC; null if there was one lattice only. */
  readonly refinedBy: number | null;
  readonly unknowns: number;
  readonly converged: boolean;
  readonly detail: StabilityDetail;
  /** The quick formula for the surfaces alone, without the fuselage; null where none applies. */
  readonly textbookMm: number | null;
  /** Whether it and the lattice part by more than is usual. */
  readonly textbookDiffers: boolean;
  /** Lift along the span of each surface's right half. */
  readonly strips: readonly StripLoad[];
  /** How the geometry was taken where that could surprise: gaps, one-piece tails. */
  readonly notes: readonly GeometryNote[];
}

/** Why there is no estimate for a geometry. */
export interface StabilityFault {
  readonly fault: string;
}

/** Null: nothing there lifts. */
export type StabilityAnswer = StabilityEstimate | StabilityFault | null;

/** `coarse` while something is dragged, `fine` at rest. */
export type StabilityDetail = 'coarse' | 'fine';

/** To be said beside every band that comes from an estimate. */
export const ESTIMATE_ADVICE = 'This is an estimate: start at the forward end.';

/** What the estimate of an aircraft depends on; the very same object again while none of it has changed. */
export function stabilityInput(aircraft: Aircraft): StabilityInput {
  const { structure, kind } = aircraft;
  const mac = wingPlanform(aircraft);
  const macAt = mac && ([mac.macMm, mac.lemacMm, mac.macButtlineMm] as const);
  return inputOf(structure, stabilitySettings(aircraft).fuselage, powerOf(kind), ...(macAt ?? []));
}

/** By all that it depends on; without the last three figures there is no MAC. */
const inputOf = perObjects(
  (
    structure: Aircraft['structure'],
    countFuselage: boolean,
    power: StabilityInput['power'],
    ...mac: readonly [macMm: number, lemacMm: number, macButtlineMm: number] | readonly []
  ): StabilityInput => {
    const { main, others } = hullsOf({ structure });
    return {
      surfaces: liftingSurfaces({ structure }),
      carries: rootCarries(structure),
      mac: mac.length === 0 ? null : { macMm: mac[0], lemacMm: mac[1], macButtlineMm: mac[2] },
      hull: main,
      countFuselage,
      otherHulls: others,
      power,
    };
  },
);

function powerOf(kind: Aircraft['kind']): StabilityInput['power'] {
  switch (kind) {
    case 'petrol':
    case 'electric':
      return 'propeller';
    case 'turbine':
      return 'turbine';
    case 'glider':
      return 'none';
  }
}
