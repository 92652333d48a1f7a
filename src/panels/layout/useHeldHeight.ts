import { useEffect, useRef } from 'react';
import { useBench } from '../../store/react';

/**
 * Keeps an element as high as it is while something is in hand, however many lines its words take meanwhile: what lies
 * under it would move under the hand.
 */
export function useHeldHeight<E extends HTMLElement>() {
  const { drag, reshape } = useBench();
  const element = useRef<E>(null);
  useEffect(() => {
    const holdOrLetGo = () => {
      const held = element.current;
      if (!held) return;
      const inHand = drag.api.getState().itemId !== null || reshape.api.getState().pieceId !== null;
      if (inHand === 'held' in held.dataset) return;
      held.style.height = inHand ? `${held.getBoundingClientRect().height}px` : '';
      if (inHand) held.dataset.held = '';
      else delete held.dataset.held;
    };
    const off = [drag.api.subscribe(holdOrLetGo), reshape.api.subscribe(holdOrLetGo)];
    return () => {
      for (const stop of off) stop();
    };
  }, [drag, reshape]);
  return element;
}
