import type { FuselageStation } from '../../engine/wing/fuselage';
import type { COMMON_MARGINS, MarginRange } from '../../engine/wing/margin';
import type { StripLoad } from '../../engine/wing/spanLoading';
import type { LiftingSurface } from '../../engine/wing/types';
import type { Aircraft, Fuselage } from '../document/types';
import { macSurface } from './band';
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
export function changeStability(aircraft: Aircraft, change: Partial<StabilitySettings>): Aircraft {
  return { ...aircraft, stability: { ...aircraft.stability, ...change } };
}

export type MarginKind = keyof typeof COMMON_MARGINS;

/** The kind of aircraft whose usual margin is offered first; a guess from layout and engine, to be offered only. */
export function likelyMarginKind({ kind, structure }: Aircraft): MarginKind {
  const roles = new Set(structure.map((element) => (element.kind === 'surface' ? element.role : null)));
  if (kind === 'turbine') return 'jet';
  if (roles.has('canard')) return 'canard';
  if (roles.has('wing') && !roles.has('tailplane') && !roles.has('v-tail')) return 'flyingWing';
  return kind === 'glider' ? 'glider' : 'sport';
}

/** Everything that the estimate depends on; plain, so that it can be sent to a worker. */
export interface StabilityInput {
  readonly surfaces: readonly LiftingSurface[];
  /** The surface whose MAC every reading is on; null for the largest. */
  readonly macSurfaceId: string | null;
  /** The main hull, nose to tail; null without one. It also tells which roots end at its sides. */
  readonly hull: readonly FuselageStation[] | null;
  readonly countFuselage: boolean;
  /** Hulls besides the main one. */
  readonly otherHulls: number;
}

/** An estimate, never a measurement. Stations in mm aft of the datum, angles in radians; plain data. */
export interface StabilityEstimate {
  readonly neutralPointMm: number;
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
  /** Sentences on what is not counted. */
  readonly leavesOut: readonly string[];
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

const inputs = new WeakMap<Aircraft['structure'], Map<string, StabilityInput>>();

/** What the estimate of an aircraft depends on; the very same object again while none of it has changed. */
export function stabilityInput(aircraft: Aircraft): StabilityInput {
  const { structure } = aircraft;
  const { fuselage: countFuselage } = stabilitySettings(aircraft);
  const macSurfaceId = macSurface(aircraft)?.id ?? null;
  const ofStructure = inputs.get(structure) ?? new Map<string, StabilityInput>();
  inputs.set(structure, ofStructure);
  const key = `${countFuselage} ${macSurfaceId}`;
  let input = ofStructure.get(key);
  if (!input) {
    const hulls = structure.filter((element) => element.kind === 'fuselage');
    const main = mainHull(hulls);
    input = {
      surfaces: liftingSurfaces(aircraft),
      macSurfaceId,
      hull: main?.sections.map(({ stationMm, widthMm }) => ({ stationMm, widthMm })) ?? null,
      countFuselage,
      otherHulls: hulls.length - (main ? 1 : 0),
    };
    ofStructure.set(key, input);
  }
  return input;
}

/** The hull on the centre line that is largest seen from above. */
function mainHull(hulls: readonly Fuselage[]): Fuselage | null {
  let main: Fuselage | null = null;
  let mainAreaMm2 = 0;
  for (const hull of hulls) {
    if (hull.sides !== 'centre') continue;
    const areaMm2 = areaFromAbove(hull);
    if (areaMm2 > mainAreaMm2) [main, mainAreaMm2] = [hull, areaMm2];
  }
  return main;
}

function areaFromAbove({ sections }: Fuselage): number {
  return sections.slice(1).reduce((sum, rear, index) => {
    const front = sections[index] ?? rear;
    return sum + ((rear.stationMm - front.stationMm) * (rear.widthMm + front.widthMm)) / 2;
  }, 0);
}
