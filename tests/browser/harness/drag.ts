import type { Page } from 'playwright-core';

/** A place on the page in CSS pixels from its top left corner. */
export interface PagePoint {
  readonly x: number;
  readonly y: number;
}

export interface DragOptions {
  /** Pointer moves on the way; 10 unless given. */
  readonly steps?: number;
  /** End by cancelling: Escape for the mouse, a cancelled pointer for touch. */
  readonly cancel?: boolean;
  /** With a finger; the bench must have been opened with `touch`. */
  readonly touch?: boolean;
  /** Called at the far end, before the pointer is let go. */
  readonly beforeRelease?: () => Promise<void>;
}

/** Drags with real pointer events, in a straight line of equal steps. */
export async function drag(
  page: Page,
  from: PagePoint,
  to: PagePoint,
  options: DragOptions = {},
): Promise<void> {
  const { steps = 10, cancel = false, touch = false, beforeRelease } = options;
  const pointer = touch ? await finger(page) : mouse(page);
  await pointer.down(from);
  try {
    for (let step = 1; step <= steps; step++) {
      const part = step / steps;
      await pointer.move({ x: from.x + (to.x - from.x) * part, y: from.y + (to.y - from.y) * part });
    }
    await beforeRelease?.();
  } finally {
    // Let go even where the test has failed, so that the next begins with a free hand.
    await (cancel ? pointer.cancel() : pointer.up());
  }
}

interface Pointer {
  down(at: PagePoint): Promise<void>;
  move(to: PagePoint): Promise<void>;
  up(): Promise<void>;
  cancel(): Promise<void>;
}

function mouse(page: Page): Pointer {
  return {
    async down({ x, y }) {
      await page.mouse.move(x, y);
      await page.mouse.down();
    },
    move: ({ x, y }) => page.mouse.move(x, y),
    up: () => page.mouse.up(),
    async cancel() {
      await page.keyboard.press('Escape');
      await page.mouse.up();
    },
  };
}

/** How long a finger rests before it is lifted, ms. */
const REST_MS = 150;

async function finger(page: Page): Promise<Pointer> {
  const protocol = await page.context().newCDPSession(page);
  const send = async (type: 'touchStart' | 'touchMove' | 'touchEnd' | 'touchCancel', points: PagePoint[]) => {
    await protocol.send('Input.dispatchTouchEvent', { type, touchPoints: points });
    if (points.length === 0) await protocol.detach();
  };
  return {
    down: (at) => send('touchStart', [at]),
    move: (to) => send('touchMove', [to]),
    async up() {
      // Let go from rest: lifted out of a move it would be a flick, and the next touch would only stop that.
      await page.waitForTimeout(REST_MS);
      await send('touchEnd', []);
    },
    cancel: () => send('touchCancel', []),
  };
}
