import { useEffect, useState } from 'react';
import { useBench } from '../store/react';

/** How long the bench must rest before what it says is read aloud, ms. */
const REST_MS = 700;

/** The latest of a text, but only once nothing is in hand and it has not changed for a while. */
export function useSettled(text: string): string {
  const bench = useBench();
  const [settled, setSettled] = useState(text);
  useEffect(() => {
    let timer = 0;
    const wait = () => {
      timer = window.setTimeout(() => {
        if (bench.drag.api.getState().itemId !== null || bench.view.getState().playing) wait();
        else setSettled(text);
      }, REST_MS);
    };
    wait();
    return () => window.clearTimeout(timer);
  }, [text, bench]);
  return settled;
}
