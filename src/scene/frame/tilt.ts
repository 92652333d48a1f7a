import { createContext, useContext, useEffect, useMemo, useState } from 'react';
import { Matrix4, Quaternion } from 'three';
import { poseRotation, turn } from '../../engine/geometry/rotation';
import type { Mat3, Vec3 } from '../../engine/geometry/types';
import { add, sub } from '../../engine/geometry/vec3';
import { isLevel } from '../../model/loads/attitude';
import type { Bench } from '../../store/bench';
import { useBench } from '../../store/react';
import { eased, lessMotion } from './eased';
import { cornersOnce, extentOnce } from './useGround';

const TILT_MS = 450;

/** How the world, mat and all, stands to the aircraft, in the aircraft's frame. */
export interface TiltState {
  /** Takes the level world's directions to where they are now. */
  readonly turn: Quaternion;
  /** The point that it turns about, mm. */
  readonly aboutMm: Vec3;
  /** Where the mat lies in the level world, mm: under the lowest point of the aircraft as it is held. */
  readonly groundMm: number;
  readonly level: boolean;
}

/** The turn of the world about an aircraft that is pitched and rolled: its attitude undone. */
const worldTurn = (pitchDeg: number, rollDeg: number): Mat3 =>
  poseRotation({ positionMm: [0, 0, 0], yawDeg: 0, pitchDeg, rollDeg });

function quaternionOf(r: Mat3): Quaternion {
  const m = new Matrix4().set(r[0], r[1], r[2], 0, r[3], r[4], r[5], 0, r[6], r[7], r[8], 0, 0, 0, 0, 1);
  // The transpose: the attitude undone.
  return new Quaternion().setFromRotationMatrix(m.transpose());
}

function middleMm({ document }: Bench): Vec3 {
  const { minMm, maxMm } = extentOnce(document.api.getState().committed);
  return [(minMm[0] + maxMm[0]) / 2, 0, (minMm[2] + maxMm[2]) / 2];
}

/** How the world stands when the aircraft is held so. */
function tiltOf(bench: Bench, pitchDeg: number, rollDeg: number): TiltState {
  const aboutMm = middleMm(bench);
  const r = worldTurn(pitchDeg, rollDeg);
  const heights = cornersOnce(bench.document.api.getState().committed).map(
    (corner) => add(turn(r, sub(corner, aboutMm)), aboutMm)[2],
  );
  return {
    turn: quaternionOf(r),
    aboutMm,
    groundMm: Math.min(...heights),
    level: pitchDeg === 0 && rollDeg === 0,
  };
}

/** Holds how the world stands, and tells those who draw by it. */
export interface TiltStore {
  getState(): TiltState;
  setState(state: TiltState): void;
  subscribe(listener: () => void): () => void;
}

function createTiltStore(first: TiltState): TiltStore {
  let now = first;
  const listeners = new Set<() => void>();
  return {
    getState: () => now,
    setState: (state) => {
      now = state;
      for (const listener of listeners) listener();
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

export const TiltContext = createContext<TiltStore | null>(null);

export function useTilt(): TiltStore {
  const tilt = useContext(TiltContext);
  if (!tilt) throw new Error('useTilt needs a TiltContext around it');
  return tilt;
}

/** Whether the aircraft is held level as far as the mat is concerned. */
export function useIsTilted(): boolean {
  const tilt = useTilt();
  const [tilted, setTilted] = useState(!tilt.getState().level);
  useEffect(() => {
    const look = () => setTilted(!tilt.getState().level);
    look();
    return tilt.subscribe(look);
  }, [tilt]);
  return tilted;
}

/** Follows the attitude of the bench, eased unless less motion is wanted. */
export function useTiltStore(invalidate: () => void): TiltStore {
  const bench = useBench();
  const tilt = useMemo(() => createTiltStore(tiltOf(bench, 0, 0)), [bench]);
  useEffect(() => {
    let stop = () => {};
    let [pitch, roll] = [0, 0];
    const show = (pitchDeg: number, rollDeg: number) => {
      [pitch, roll] = [pitchDeg, rollDeg];
      tilt.setState(tiltOf(bench, pitchDeg, rollDeg));
      invalidate();
    };
    const follow = () => {
      const { attitude } = bench.view.getState();
      const [fromPitch, fromRoll] = [pitch, roll];
      stop();
      stop = eased(
        0,
        1,
        (isLevel(attitude) && pitch === 0 && roll === 0) || lessMotion() ? 0 : TILT_MS,
        (share) =>
          show(
            fromPitch + (attitude.pitchDeg - fromPitch) * share,
            fromRoll + (attitude.rollDeg - fromRoll) * share,
          ),
      );
    };
    follow();
    const offView = bench.view.subscribe((now, before) => now.attitude !== before.attitude && follow());
    const offDocument = bench.document.api.subscribe(
      (now, before) => now.committed !== before.committed && show(pitch, roll),
    );
    return () => {
      stop();
      offView();
      offDocument();
    };
  }, [bench, tilt, invalidate]);
  return tilt;
}
