import { useCallback, useEffect, useState } from 'react';
import type { Pose } from '../../engine/geometry/types';
import { breakPair, updatePart, updateTank } from '../../model/document/edit';
import type { Aircraft } from '../../model/document/types';
import { useBench } from '../../store/react';

/** How long a way in takes to play, s: so much, and so much more for each hundred steps. */
const LEAST_S = 2;
const PER_HUNDRED_S = 0.8;

/** One of a pair goes in by itself: the other one stays where it is. */
const standing = (paired: Aircraft, id: string, pose: Pose): Aircraft => {
  const aircraft = breakPair(paired, id);
  return aircraft.tanks.some((tank) => tank.id === id)
    ? updateTank(aircraft, id, pose)
    : updatePart(aircraft, id, pose);
};

/**
 * Shows an item along a way in, as a preview of the document: all that answers to a drag answers to this. Escape,
 * an edit and leaving put it back. Without motion it goes step by step, by `show`.
 */
export function usePathPlay(id: string, poses: readonly Pose[]) {
  const { document, fit, drag } = useBench();
  const [at, setAt] = useState<number | null>(null);
  const [playing, setPlaying] = useState(false);

  const stop = useCallback(() => {
    setPlaying(false);
    setAt(null);
    if (!fit.get().playing) return;
    fit.api.setState({ playing: false });
    document.cancel();
  }, [document, fit]);

  const show = useCallback(
    (step: number) => {
      const pose = poses[step];
      if (!pose || drag.api.getState().itemId !== null) return stop();
      fit.api.setState({ playing: true });
      document.preview(standing(document.api.getState().committed, id, pose));
      setAt(step);
    },
    [document, drag, fit, id, poses, stop],
  );

  // An edit or an undo in between takes the preview away: then it is over.
  useEffect(() => {
    const off = document.api.subscribe(({ preview }) => {
      if (fit.get().playing && preview === null) stop();
    });
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'Escape' || !fit.get().playing) return;
      event.preventDefault();
      event.stopPropagation();
      stop();
    };
    window.addEventListener('keydown', onKey, { capture: true });
    return () => {
      off();
      window.removeEventListener('keydown', onKey, { capture: true });
      stop();
    };
  }, [document, fit, stop]);

  useEffect(() => {
    if (!playing) return;
    const wholeMs = 1000 * (LEAST_S + (PER_HUNDRED_S * poses.length) / 100);
    let beganMs: number | null = null;
    let frame = requestAnimationFrame(function run(nowMs) {
      beganMs ??= nowMs;
      const share = (nowMs - beganMs) / wholeMs;
      if (share >= 1) return stop();
      show(Math.round(share * (poses.length - 1)));
      frame = requestAnimationFrame(run);
    });
    return () => cancelAnimationFrame(frame);
  }, [playing, poses, show, stop]);

  return { at, playing, show, stop, play: () => setPlaying(true) };
}
