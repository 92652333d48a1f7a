import { useThree } from '@react-three/fiber';
import { useCallback, useEffect, useRef } from 'react';
import type { Bench } from '../../store/bench';
import { useBench } from '../../store/react';
import { eased, lessMotion } from '../frame/eased';
import { extentOnce } from '../frame/useGround';

/** How far items are lifted out of the airframe, as a share of its height. */
const SHARE = 0.42;
const LEAST_MM = 120;
const LIFT_MS = 320;

const wholeLiftMm = ({ document }: Bench): number => {
  const { minMm, maxMm } = extentOnce(document.api.getState().committed);
  return Math.max(LEAST_MM, SHARE * (maxMm[2] - minMm[2]));
};

/** How high above their places items are drawn now, mm: for looking at, and eased unless less motion is wanted. */
export function useLift(): () => number {
  const bench = useBench();
  const invalidate = useThree((state) => state.invalidate);
  const share = useRef(bench.view.getState().looking.exploded ? 1 : 0);
  useEffect(() => {
    let stop = () => {};
    const off = bench.view.subscribe((now, before) => {
      if (now.looking.exploded === before.looking.exploded) return;
      stop();
      const to = now.looking.exploded ? 1 : 0;
      stop = eased(share.current, to, lessMotion() ? 0 : LIFT_MS, (value) => {
        share.current = value;
        // The view notifies whoever places items; nothing else in it has changed.
        bench.view.setState({});
        invalidate();
      });
    });
    return () => {
      stop();
      off();
    };
  }, [bench, invalidate]);
  return useCallback(() => (share.current === 0 ? 0 : share.current * wholeLiftMm(bench)), [bench]);
}
