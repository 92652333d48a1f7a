import type { Vec3 } from '../engine/geometry/types';

/** What is looked at, and from where, whatever the size of the picture. Aircraft frame, mm. */
export interface Gaze {
  /** In the middle of the picture. */
  readonly atMm: Vec3;
  /** Where the eye of the free view stands; elevations look square. */
  readonly fromMm?: Vec3 | undefined;
  /** How much is seen there from left to right, and from top to bottom. */
  readonly wideMm: number;
  readonly highMm: number;
}

/** A wish of how to look at the stage, from a key or a button anywhere. */
export type EyeMove =
  /** All of the aircraft, from where one stands. */
  | { readonly kind: 'fit' }
  /** The view as it began. */
  | { readonly kind: 'reset' }
  /** More than 1 shows more. */
  | { readonly kind: 'zoom'; readonly factor: number }
  /** Just so, in the view that is shown; at once, or in a flight from where one looks now. */
  | { readonly kind: 'look'; readonly gaze: Gaze; readonly flies: boolean }
  /** Round the aircraft in the free view, degrees; in the elevations the picture is shifted, px for degrees. */
  | { readonly kind: 'turn'; readonly rightDeg: number; readonly upDeg: number };

/** Carries wishes from whoever has them to the stage, which alone has a camera. */
export interface Eye {
  ask(move: EyeMove): void;
  /** How the stage is looked at; null while there is none. */
  gaze(): Gaze | null;
  /** The stage serves; returns how to stop. */
  serve(how: (move: EyeMove) => void, gaze: () => Gaze | null): () => void;
}

export function createEye(): Eye {
  let serving: { how: (move: EyeMove) => void; gaze: () => Gaze | null } | null = null;
  return {
    ask: (move) => serving?.how(move),
    gaze: () => serving?.gaze() ?? null,
    serve: (how, gaze) => {
      const served = { how, gaze };
      serving = served;
      return () => {
        if (serving === served) serving = null;
      };
    },
  };
}
