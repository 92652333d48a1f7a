/**
 * Put into a page before anything else of it runs. Frames then come as soon as they are asked for, so that no time is
 * waited away, and `scriptMs` gives the time that each of some moves takes from its beginning to the end of its frame:
 * what follows the store, React and the renderer, and where the browser's own style, layout and paint of the page fall
 * between, those too; beside it what of that was spent in the scripts themselves. What a graphics card would then do is
 * left out on either page: done in software it would hold up the scripts that hand it over.
 */
export const frameAtOnce = `{
  for (const call of ['drawElements', 'drawArrays', 'drawElementsInstanced', 'drawArraysInstanced'])
    WebGL2RenderingContext.prototype[call] = () => {};
  const next = new MessageChannel();
  let due = new Map();
  let last = 0;
  let inFramesMs = 0;
  next.port1.onmessage = () => {
    const start = performance.now();
    const now = due;
    due = new Map();
    for (const run of now.values()) {
      try {
        run(performance.now());
      } catch (error) {
        reportError(error);
      }
    }
    inFramesMs += performance.now() - start;
  };
  window.requestAnimationFrame = (run) => {
    last += 1;
    if (due.size === 0) next.port2.postMessage(0);
    due.set(last, run);
    return last;
  };
  window.cancelAnimationFrame = (id) => due.delete(id);
  const afterFrame = () =>
    new Promise((done) =>
      requestAnimationFrame(() => {
        const after = new MessageChannel();
        after.port1.onmessage = done;
        after.port2.postMessage(0);
      }),
    );
  window.scriptMs = async (move, moves) => {
    const times = [];
    for (let i = 0; i < moves; i += 1) {
      const start = performance.now();
      inFramesMs = 0;
      move(i);
      // What React follows with comes in the same turn, before this goes on.
      await null;
      const inMoveMs = performance.now() - start;
      await afterFrame();
      times.push({ wholeMs: performance.now() - start, scriptsMs: inMoveMs + inFramesMs });
    }
    return times;
  };
}`;

/** Drags the heaviest part that may move to and fro, so many moves; ms for each. */
export const dragOnBench = (moves: number) => `(async () => {
  const { document, drag, view } = window.counterpoise;
  const [part] = document.current().parts.filter(({ locked }) => !locked).sort((a, b) => b.massG - a.massG);
  view.setState({ selectedId: part.id });
  const [x, y, z] = part.positionMm;
  drag.pickUp(part.id);
  const times = await window.scriptMs((i) => drag.moveTo([x + (i % 60), y, z]), ${moves});
  drag.cancel();
  return times;
})()`;

export const dragAPlainBox = (moves: number) => `window.scriptMs((i) => window.moveBox(i % 60), ${moves})`;

/** Fills the aircraft on the bench up to so many parts with small boxes side by side. */
export const fillUp = (parts: number) => `{
  const { document } = window.counterpoise;
  const now = document.current();
  const [like] = now.parts;
  const more = Array.from({ length: ${parts} - now.parts.length }, (_, i) => ({
    ...like,
    id: 'more-' + i,
    name: 'More ' + i,
    role: 'other',
    shape: { kind: 'box', lengthMm: 20 + (i % 7), widthMm: 15, heightMm: 10 },
    massG: 5 + (i % 9),
    locked: false,
    positionMm: [200 + (i % 40) * 25, (((i * 7) % 11) - 5) * 30, (((i * 3) % 5) - 2) * 12],
  }));
  document.replace({ ...now, parts: [...now.parts, ...more] });
}`;
