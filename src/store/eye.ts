/** A wish of how to look at the stage, from a key or a button anywhere. */
export type EyeMove =
  /** All of the aircraft, from where one stands. */
  | { readonly kind: 'fit' }
  /** The view as it began. */
  | { readonly kind: 'reset' }
  /** More than 1 shows more. */
  | { readonly kind: 'zoom'; readonly factor: number }
  /** Round the aircraft in the free view, degrees; in the elevations the picture is shifted, px for degrees. */
  | { readonly kind: 'turn'; readonly rightDeg: number; readonly upDeg: number };

/** Carries wishes from whoever has them to the stage, which alone has a camera. */
export interface Eye {
  ask(move: EyeMove): void;
  /** The stage serves; returns how to stop. */
  serve(how: (move: EyeMove) => void): () => void;
}

export function createEye(): Eye {
  let serving: ((move: EyeMove) => void) | null = null;
  return {
    ask: (move) => serving?.(move),
    serve: (how) => {
      serving = how;
      return () => {
        if (serving === how) serving = null;
      };
    },
  };
}
