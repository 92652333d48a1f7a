export type Place = readonly [x: number, y: number];

/** The stage's box on the page, and places in it. */
export interface StageFrame {
  /** CSS px from the box's top left. */
  place(event: MouseEvent): Place;
  /** The same as the camera has it: −1 to 1, right and up. */
  picture(at: Place): Place;
  size(): { readonly width: number; readonly height: number };
  /** From now on the box is taken to stand where it stands: whatever the page does, a pixel of the pointer stays a pixel. */
  hold(): void;
  letGo(): void;
}

interface Box {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export function createStageFrame(element: HTMLElement): StageFrame {
  let held: Box | null = null;
  const box = (): Box => held ?? element.getBoundingClientRect();
  return {
    place: (event) => {
      const { left, top } = box();
      return [event.clientX - left, event.clientY - top];
    },
    picture: ([x, y]) => {
      const { width, height } = box();
      return [(x / width) * 2 - 1, 1 - (y / height) * 2];
    },
    size: () => {
      const { width, height } = box();
      return { width, height };
    },
    hold: () => {
      held ??= element.getBoundingClientRect();
    },
    letGo: () => {
      held = null;
    },
  };
}
