import type { Place, StageFrame } from './stageFrame';

/** The pointers that are down on the stage. */
export interface Fingers {
  /** Takes one in; returns where it is. */
  goDown(event: PointerEvent): Place;
  /** The orbit must not see this one, now or later. */
  keep(event: PointerEvent): void;
  /** Moves one; null for one that is not down. `other` is where a second is. */
  move(
    event: PointerEvent,
  ): { readonly at: Place; readonly before: Place; readonly other: Place | null } | null;
  /** One is gone. */
  goUp(event: PointerEvent): void;
  /** All are, wherever they were. */
  forget(): void;
  count(): number;
  /** True where the orbit has not seen one of them go down. */
  anyKept(): boolean;
}

export function createFingers(frame: StageFrame): Fingers {
  const places = new Map<number, Place>();
  const kept = new Set<number>();
  return {
    goDown(event) {
      if (places.size === 0) frame.letGo();
      frame.hold();
      const at = frame.place(event);
      places.set(event.pointerId, at);
      return at;
    },
    keep(event) {
      kept.add(event.pointerId);
      event.stopPropagation();
    },
    move(event) {
      const before = places.get(event.pointerId);
      if (!before) return null;
      const at = frame.place(event);
      const other = [...places].find(([id]) => id !== event.pointerId)?.[1] ?? null;
      places.set(event.pointerId, at);
      if (kept.has(event.pointerId)) event.stopPropagation();
      return { at, before, other };
    },
    goUp(event) {
      places.delete(event.pointerId);
      if (kept.delete(event.pointerId) && event.type !== 'lostpointercapture') event.stopPropagation();
      if (places.size === 0) frame.letGo();
    },
    forget() {
      places.clear();
      kept.clear();
      frame.letGo();
    },
    count: () => places.size,
    anyKept: () => kept.size > 0,
  };
}
