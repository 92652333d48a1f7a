import { type PointerEvent, useRef } from 'react';

/** A mouse that lies still is not pointing, ms. */
const RESTS_MS = 3000;

/** A finger that goes so far across turns the slide, px. */
const SWIPE_PX = 56;

interface HandProps {
  /** Whether the pointer is shown large. */
  readonly pointer: boolean;
  readonly onSwipe: (by: 1 | -1) => void;
}

/** Lies over the picture: shows where the hand points, and takes swipes. */
export function Hand({ pointer, onSwipe }: HandProps) {
  const disc = useRef<HTMLSpanElement>(null);
  const resting = useRef(0);
  const from = useRef<readonly [number, number] | null>(null);
  const point = (event: PointerEvent, shown: boolean) => {
    if (!disc.current) return;
    const box = event.currentTarget.getBoundingClientRect();
    disc.current.style.translate = `${event.clientX - box.left}px ${event.clientY - box.top}px`;
    disc.current.hidden = !shown;
    clearTimeout(resting.current);
    resting.current = window.setTimeout(() => {
      if (disc.current) disc.current.hidden = true;
    }, RESTS_MS);
  };
  const isFinger = (event: PointerEvent) => event.pointerType !== 'mouse';
  return (
    <div
      className="show-hand"
      data-testid="show-hand"
      onPointerMove={(event) => point(event, true)}
      onPointerLeave={(event) => point(event, false)}
      onPointerDown={(event) => {
        point(event, true);
        from.current = isFinger(event) ? [event.clientX, event.clientY] : null;
      }}
      onPointerUp={(event) => {
        const began = from.current;
        from.current = null;
        if (!began) return;
        point(event, false);
        const [across, down] = [event.clientX - began[0], event.clientY - began[1]];
        if (Math.abs(across) > SWIPE_PX && Math.abs(across) > Math.abs(down)) onSwipe(across < 0 ? 1 : -1);
      }}
      onPointerCancel={() => {
        from.current = null;
      }}
    >
      {pointer && <span ref={disc} className="show-pointer" hidden />}
    </div>
  );
}
