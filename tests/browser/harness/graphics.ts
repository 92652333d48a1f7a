import type { BrowserContext } from 'playwright-core';

/**
 * True for pictures as they are. 'unpainted' for a stage that is there to hand, eye and count, whose pixels nobody
 * works out: in software they take most of a test's time, and few tests look at them. False for a browser without
 * WebGL.
 */
export type Graphics = boolean | 'unpainted';

export async function setGraphics(context: BrowserContext, graphics: Graphics): Promise<void> {
  if (graphics === 'unpainted') await context.addInitScript(withoutPixels);
  if (!graphics) await context.addInitScript(withoutGraphics);
}

function withoutGraphics(): void {
  const real = HTMLCanvasElement.prototype.getContext as (...given: unknown[]) => unknown;
  HTMLCanvasElement.prototype.getContext = function (this: HTMLCanvasElement, ...given: unknown[]) {
    return given[0] === '2d' ? real.apply(this, given) : null;
  } as typeof HTMLCanvasElement.prototype.getContext;
}

/** Everything is asked of WebGL but the drawing itself, on a canvas of one pixel that its style stretches. */
function withoutPixels(): void {
  const canvases = HTMLCanvasElement.prototype;
  const real = canvases.getContext as (...given: unknown[]) => unknown;
  const stamped = new WeakSet<HTMLCanvasElement>();
  canvases.getContext = function (this: HTMLCanvasElement, ...given: unknown[]) {
    const context = real.apply(this, given);
    if (!(context instanceof WebGL2RenderingContext) || stamped.has(this)) return context;
    stamped.add(this);
    for (const side of ['width', 'height'] as const) {
      let asked = this[side];
      this[side] = 1;
      Object.defineProperty(this, side, {
        get: () => asked,
        set: (px: number) => {
          asked = px;
        },
      });
    }
    const draws = ['drawArrays', 'drawElements', 'drawArraysInstanced', 'drawElementsInstanced'] as const;
    for (const draw of draws) context[draw] = () => {};
    return context;
  } as typeof canvases.getContext;
}
