import { type RefObject, useEffect, useState } from 'react';
import type { Bench } from '../store/bench';
import { useBench } from '../store/react';
import type { Lesson } from '../store/viewStore';

const WORDS: Readonly<Record<Lesson, string>> = {
  drag: 'Drag it: the quartered disc is the CG, and answers',
  nudge: 'Arrow keys move it by 1 mm · Ctrl Z takes it back',
  nearer: 'Wheel or pinch: nearer · Home: all as it began',
};

/** How long a lesson that follows on something done stays, ms. */
const SHOWN_MS = 7000;

interface LessonsProps {
  readonly picture: RefObject<HTMLElement | null>;
}

/** The first gestures explain themselves as they are made, once each: in the place where a drag is read, never in the way. */
export function StageLessons({ picture }: LessonsProps) {
  const bench = useBench();
  const [shown, setShown] = useState<Lesson | null>(null);
  useEffect(() => {
    if (!picture.current) return;
    return watchLessons(bench, picture.current, setShown);
  }, [bench, picture]);
  return (
    <div className="stage-readout stage-lesson" data-testid="lesson">
      {shown && WORDS[shown]}
    </div>
  );
}

/** Says when a lesson is to be shown, and null when no longer. Returns how to stop. */
function watchLessons(bench: Bench, picture: HTMLElement, show: (lesson: Lesson | null) => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const isNew = (lesson: Lesson) => !bench.view.getState().learned.includes(lesson);
  const learn = (lesson: Lesson) => {
    if (isNew(lesson)) bench.view.setState(({ learned }) => ({ learned: [...learned, lesson] }));
  };
  const showAWhile = (lesson: Lesson) => {
    if (!isNew(lesson)) return;
    learn(lesson);
    show(lesson);
    clearTimeout(timer);
    timer = setTimeout(() => show(null), SHOWN_MS);
  };
  let turning = false;
  const turn = ({ buttons }: PointerEvent) => {
    turning ||= buttons === 1 && bench.drag.api.getState().itemId === null;
  };
  const turned = () => {
    if (turning) showAWhile('nearer');
    turning = false;
  };
  picture.addEventListener('pointermove', turn);
  window.addEventListener('pointerup', turned);
  const offView = bench.view.subscribe((now, before) => {
    if (now.hoveredId === before.hoveredId || !isNew('drag')) return;
    show(now.hoveredId === null ? null : 'drag');
  });
  const offDrag = bench.drag.api.subscribe((now, before) => {
    if (now.itemId !== null) {
      learn('drag');
      show(null);
    } else if (before.itemId !== null) showAWhile('nudge');
  });
  return () => {
    clearTimeout(timer);
    picture.removeEventListener('pointermove', turn);
    window.removeEventListener('pointerup', turned);
    offView();
    offDrag();
  };
}
