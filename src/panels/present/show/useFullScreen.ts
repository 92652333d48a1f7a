import { type RefObject, useEffect, useRef } from 'react';

/**
 * Takes the whole screen where the browser lets it, else the window, and keeps what lies behind out of reach meanwhile.
 * Whoever leaves the full screen leaves the show.
 */
export function useFullScreen(sheet: RefObject<HTMLElement | null>, onLeave: () => void): void {
  const leave = useRef(onLeave);
  leave.current = onLeave;
  useEffect(() => {
    const shown = sheet.current;
    const behind = document.getElementById('root');
    const before = document.activeElement;
    if (behind) behind.inert = true;
    shown?.focus();
    // Refused without a press of a key or a button, or where there is none: it fills the window then.
    shown?.requestFullscreen?.().catch(() => {});
    let wasFull = false;
    const onChange = () => {
      if (document.fullscreenElement === shown) wasFull = true;
      else if (wasFull) leave.current();
    };
    document.addEventListener('fullscreenchange', onChange);
    return () => {
      document.removeEventListener('fullscreenchange', onChange);
      if (document.fullscreenElement) document.exitFullscreen().catch(() => {});
      if (behind) behind.inert = false;
      if (before instanceof HTMLElement) before.focus();
    };
  }, [sheet]);
}
