import type { Ray } from '../../interaction/dragPlane';
import type { Handle } from '../../interaction/handles/handle';

/** A handle with the knob on the page that stands for it. */
export interface Knob {
  readonly handle: Handle;
  readonly element: HTMLElement;
}

/** Where the page's knobs and the picture meet: the scene writes where they stand, and says where a pointer leads. */
export interface HandlePlace {
  knobs: readonly Knob[];
  /** What stands beside the knob that is in hand, and whose. */
  field: { readonly element: HTMLElement; readonly handleId: string } | null;
  /** The pointer's ray through a place of the page, CSS px. */
  ray: ((clientX: number, clientY: number) => Ray) | null;
  /** How much of the model a pixel covers at a handle, mm. */
  mmPerPx: ((handle: Handle) => number) | null;
  /** Asks for a frame. */
  refresh: (() => void) | null;
}

export const noHandles = (): HandlePlace => ({
  knobs: [],
  field: null,
  ray: null,
  mmPerPx: null,
  refresh: null,
});
