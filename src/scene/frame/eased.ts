export const lessMotion = (): boolean => matchMedia('(prefers-reduced-motion: reduce)').matches;

/** Slow at either end (the cubic of CSS's ease-in-out family). */
const ease = (t: number): number => (t < 0.5 ? 4 * t * t * t : 1 - (-2 * t + 2) ** 3 / 2);

/** Takes a value from one figure to another in so many ms; returns how to stop where it is. */
export function eased(
  from: number,
  to: number,
  ms: number,
  show: (value: number) => void,
  done?: () => void,
): () => void {
  if (ms <= 0 || from === to) {
    show(to);
    done?.();
    return () => {};
  }
  let frame = 0;
  let began: number | null = null;
  const step = (now: number) => {
    began ??= now;
    const t = Math.min(1, (now - began) / ms);
    show(from + (to - from) * ease(t));
    if (t < 1) frame = requestAnimationFrame(step);
    else done?.();
  };
  frame = requestAnimationFrame(step);
  return () => cancelAnimationFrame(frame);
}
