import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import { pxToAxis } from '../../store/axisStore';
import { type Scale, steppedValue } from './scale';

interface MarkerLimits {
  readonly least: number;
  readonly most: number;
  readonly step: number;
}

/** So many steps for a key with Shift, or a page. */
const LARGE = 10;

/** The marker on an axis by mouse, finger and keys; `onMove` gets each value on the axis' own steps. */
export function useMarker(
  scale: Scale,
  limits: MarkerLimits,
  value: number,
  onMove: (value: number) => void,
) {
  /** Where on the marker it was taken hold of, px from its place. */
  const held = useRef<number | null>(null);
  const move = (to: number) => onMove(steppedValue(to, limits));
  const pxOf = (event: PointerEvent<HTMLElement>) =>
    event.clientX - event.currentTarget.getBoundingClientRect().left;
  const valuePx = (value - scale.axis.atLeftMm) / scale.axis.mmPerPx;
  return {
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      if (event.button !== 0) return;
      event.preventDefault();
      const px = pxOf(event);
      const onMarker = event.target instanceof Element && event.target.closest('[role=slider]') !== null;
      held.current = onMarker ? px - valuePx : 0;
      event.currentTarget.setPointerCapture(event.pointerId);
      event.currentTarget.querySelector<HTMLElement>('[role=slider]')?.focus();
      move(pxToAxis(scale.axis, px - held.current));
    },
    onPointerMove: (event: PointerEvent<HTMLElement>) => {
      if (held.current !== null) move(pxToAxis(scale.axis, pxOf(event) - held.current));
    },
    onLostPointerCapture: () => {
      held.current = null;
    },
    onKeyDown: (event: KeyboardEvent<HTMLElement>) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const right = Math.sign(scale.axis.mmPerPx) * limits.step * (event.shiftKey ? LARGE : 1);
      const up = limits.step * (event.shiftKey ? LARGE : 1);
      const to: Readonly<Record<string, number>> = {
        ArrowRight: value + right,
        ArrowLeft: value - right,
        ArrowUp: value + up,
        ArrowDown: value - up,
        PageUp: value + LARGE * limits.step,
        PageDown: value - LARGE * limits.step,
        Home: limits.least,
        End: limits.most,
        // Where it stands is a prediction too.
        Enter: value,
        ' ': value,
      };
      const wanted = to[event.key];
      if (wanted === undefined) return;
      event.preventDefault();
      event.stopPropagation();
      move(wanted);
    },
  };
}
