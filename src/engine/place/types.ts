import type { Band } from '../balance/band';
import type { Vec3 } from '../geometry/types';

/** A box square to the aircraft's axes, mm from the datum. */
export interface PlaceBox {
  readonly minMm: Vec3;
  readonly maxMm: Vec3;
}

/** One load state without the parts that may move and without ballast to be found. */
export interface LoadCase {
  readonly id: string;
  /** For people: "full, undercarriage down". */
  readonly name: string;
  readonly massG: number;
  /** First moment about the datum, g·mm. */
  readonly momentGmm: Vec3;
}

/** One way in which a part may be placed: a region that its box must stay in, and how it is turned there. */
export interface PlaceOption {
  readonly id: string;
  /** For people: "nose bay", "its rail". */
  readonly name: string;
  readonly region: PlaceBox;
  /** The part's box as turned, mm along x, y, z. */
  readonly sizeMm: Vec3;
  /** From the middle of the box to the part's CG, mm. */
  readonly cgFromCentreMm: Vec3;
  /** Yaw added to how it stands now, degrees: size and CG above are with it. */
  readonly turnDeg: number;
}

/** A part that may move. Its place is the middle of its box. */
export interface MovablePart {
  readonly id: string;
  readonly name: string;
  /** g, one for each load case; 0 where it is not aboard. */
  readonly massesG: readonly number[];
  readonly options: readonly PlaceOption[];
  /** Where it is now; the option is null when none of them allows it there, so that it must move. */
  readonly present: { readonly centreMm: Vec3; readonly optionId: string | null };
}

export interface Obstacle extends PlaceBox {
  readonly id: string;
  readonly name: string;
}

/** A place that takes ballast in steps. It needs no room among the parts. */
export interface BallastSpot {
  readonly id: string;
  readonly name: string;
  readonly positionMm: Vec3;
  readonly stepG: number;
  readonly mostG: number;
}

/**
 * Two things that must be this far apart along at least one axis, mm; ids of movable parts or of obstacles. A negative gap
 * lets their boxes overlap by so much.
 */
export interface KeepApart {
  readonly id: string;
  readonly a: string;
  readonly b: string;
  readonly gapMm: number;
}

/** A lead along the axes from the middle of a part to the middle of another, or to a fixed point. */
export interface Lead {
  readonly id: string;
  readonly name: string;
  readonly from: string;
  readonly to: string | Vec3;
  readonly lengthMm: number;
}

/** Everything that the search needs, as plain data. Aircraft frame. */
export interface PlaceProblem {
  readonly cases: readonly LoadCase[];
  readonly band: Band;
  /** How far off centre the CG may be, mm; null where it does not matter. */
  readonly lateralMm: number | null;
  readonly parts: readonly MovablePart[];
  readonly obstacles: readonly Obstacle[];
  readonly spots: readonly BallastSpot[];
  /** Least gap between any two parts, and between a part and an obstacle, mm. */
  readonly clearanceMm: number;
  readonly apart: readonly KeepApart[];
  readonly leads: readonly Lead[];
}

export interface Placed {
  readonly id: string;
  readonly optionId: string;
  readonly centreMm: Vec3;
  readonly cgMm: Vec3;
  readonly moved: boolean;
}

export interface BallastPlaced {
  readonly spotId: string;
  readonly massG: number;
}

/** Where everything is put, and how it balances there. */
export interface Arrangement {
  readonly placed: readonly Placed[];
  readonly ballast: readonly BallastPlaced[];
  readonly ballastG: number;
  /** Least distance of any load case's CG inside the band, mm. */
  readonly marginMm: number;
  readonly moves: number;
}
