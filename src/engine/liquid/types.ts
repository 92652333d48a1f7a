import type { Pose, Vec3 } from '../geometry/types';
import type { Shape } from '../mass/shapes';

/** A tank as plumbed. The shape is the inside of the tank. */
export interface Tank {
  readonly id: string;
  readonly name: string;
  readonly shape: Shape;
  readonly pose: Pose;
  /** True when the shape is mirrored left to right (y → −y in its own frame) before it is posed. */
  readonly mirrored: boolean;
  readonly densityGPerMl: number;
  /** Liquid aboard at the start, ml; at most the tank's volume. */
  readonly startMl: number;
  /** What stays behind when the tank has stopped giving, ml. */
  readonly unusableMl: number;
  /** Where it drains to: the outlet (engine or dump valve), or another tank's id. */
  readonly feeds: 'outlet' | (string & {});
  /** Among tanks feeding the same place the lower rank drains first; equal ranks drain together. */
  readonly rank: number;
  /** How tanks of equal rank share: in proportion to what they hold, or with their surfaces level. */
  readonly share: 'volume' | 'level';
}

/** The liquid in one tank at one moment. Everything in the aircraft's frame. */
export interface LiquidState {
  readonly tankId: string;
  readonly volumeMl: number;
  readonly mass: import('../mass/types').MassProperties;
  /** The free surface: points p with down · p = offsetMm; null when the tank is empty or brim-full. */
  readonly surface: { readonly down: Vec3; readonly offsetMm: number } | null;
}

/** One phase of a fuel profile. */
export interface Phase {
  readonly name: string;
  readonly durationS: number;
  /** 0 idle to 100 full throttle. */
  readonly throttlePct: number;
}

/** Flow at the outlet: straight lines from idle (0 %) through the table's points to full throttle (100 %). */
export interface Flow {
  readonly idleMlPerMin: number;
  readonly fullMlPerMin: number;
  /** Points between the two, throttles rising; none is one straight line. */
  readonly table?: readonly FlowPoint[] | undefined;
}

/** The flow measured at one throttle setting. */
export interface FlowPoint {
  /** More than 0 and less than 100. */
  readonly throttlePct: number;
  readonly mlPerMin: number;
}
