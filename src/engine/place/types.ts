import type { Band } from '../balance/band';
import type { Pose, Vec3 } from '../geometry/types';

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
  /** How it is turned there, where that is otherwise than now: size and CG above are with it. */
  readonly turnedTo?: Pick<Pose, 'yawDeg' | 'pitchDeg' | 'rollDeg'>;
  /** From the middle of the box to where a lead leaves it as turned, mm, by the lead's id; the middle where not named. */
  readonly leadEndsMm?: Readonly<Record<string, Vec3>>;
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

/** A stack of ballast: as wide and high as the spot, square to the axes, growing fore and aft from the spot alike. */
export interface BallastBody {
  readonly lengthMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** g/mm³. */
  readonly densityGPerMm3: number;
}

/** A place that takes ballast in steps. Without a body it needs no room among the parts. */
export interface BallastSpot {
  readonly id: string;
  readonly name: string;
  /** Its middle, where the ballast's CG is however much there is of it. */
  readonly positionMm: Vec3;
  readonly stepG: number;
  readonly mostG: number;
  readonly body?: BallastBody;
}

/**
 * Two things that must be this far apart, mm; ids of movable parts, obstacles or ballast spots. By `axis`, which is meant
 * when it is left out, along at least one axis; a negative gap then lets their boxes overlap by so much. By `straight` in
 * a straight line between their boxes, corner to corner where they stand so.
 */
export interface KeepApart {
  readonly id: string;
  readonly a: string;
  readonly b: string;
  readonly gapMm: number;
  readonly by?: 'axis' | 'straight';
}

/**
 * A lead from the middle of a part, or from where its option says, to another or to a fixed point. It must reach: along the
 * axes where nothing else is said, or straight by way of its waypoints.
 */
export interface Lead {
  readonly id: string;
  readonly name: string;
  readonly from: string;
  readonly to: string | Vec3;
  /** Infinite where it is made to measure. */
  readonly lengthMm: number;
  readonly by?: 'axes' | 'straight';
  /** Passed in order on the way, mm. Only by `straight`. */
  readonly waypointsMm?: readonly Vec3[];
  /**
   * What it weighs, where that moves with its ends and is in none of the load cases. A lead of stated length weighs `massG`,
   * spread evenly over its run; one made to measure weighs `gPerMm` times its run.
   */
  readonly mass?: {
    readonly massG: number;
    readonly gPerMm: number;
    /** Whether it is aboard, for each load case. */
    readonly aboard: readonly boolean[];
  };
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
  /** Where no ballast may be, over and above the obstacles: beside hot pipes, over packs. */
  readonly noBallast?: readonly Obstacle[];
  /** How far inside the band every load case should be where that can be had, mm: asked for before the least ballast. */
  readonly wantedMarginMm?: number;
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
