import { useFrame, useThree } from '@react-three/fiber';
import { type RefObject, useCallback, useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import { OrthographicCamera, PerspectiveCamera, Quaternion, Vector3 } from 'three';
import type { Bench } from '../../store/bench';
import { createPiece } from '../../store/piece';
import { useBench, useCommitted, useLive, useView } from '../../store/react';
import type { View } from '../../store/viewStore';
import { lessMotion } from './eased';
import { registerElevation, STAND_OFF_MM } from './elevationCamera';
import { eyeMover } from './eyeMoves';
import { type EyePose, poseOfElevation, poseOfFree, takePose, turnedPose } from './eyePose';
import { createFlight } from './flight';
import { ROOT_TURN, toWorld } from './frame';
import { createFreeEye, type FreeEye } from './freeEye';
import { type TiltState, useTilt } from './tilt';
import { cornersOnce, useGroundMm } from './useGround';
import { useScenePiece } from './useScenePiece';

// The orbit is wanted by a hand, not by the first picture.
const orbitPiece = createPiece(
  () => import('./Orbit'),
  (module) => module.default,
);

/** What the gestures ask of the camera. */
export interface EyeControl {
  /** Ends a flight where it leads, so that what is under the pointer is what is seen. */
  land(): void;
  /** Brings the free view nearer, or away, about a place of the picture, −1 to 1. */
  zoomFree(factor: number, at: readonly [number, number]): void;
}

interface CamerasProps {
  readonly control: RefObject<EyeControl | null>;
}

/** The free view's camera and its orbit; for the elevations a camera registered with the shared axis. */
export function Cameras({ control }: CamerasProps) {
  const bench = useBench();
  const tilt = useTilt();
  const groundMm = useGroundMm();
  const name = useCommitted((aircraft) => aircraft.name);
  const invalidate = useThree((state) => state.invalidate);
  const { width, height } = useThree((state) => state.size);
  const Orbit = useScenePiece(orbitPiece, 'What turns the free view');
  const free = useMemo(createFreeEye, []);
  const square = useMemo(() => Object.assign(new OrthographicCamera(), { manual: true }), []);
  const latest = useRef({ groundMm, aspect: width / height });
  latest.current = { groundMm, aspect: width / height };

  /** How a view is looked at, at rest. */
  const poseOf = useCallback(
    (view: View): EyePose =>
      view === 'free'
        ? tiltedPose(poseOfFree(free.camera, free.target()), tilt.getState(), bench)
        : poseOfElevation(square, STAND_OFF_MM),
    [bench, free, square, tilt],
  );
  const flight = useFlight({ free, square, poseOf, latest });

  const frame = useCallback(() => {
    free.frame(cornersOnce(bench.document.current()), latest.current.aspect);
    invalidate();
  }, [bench, free, invalidate]);
  // A new aircraft is framed afresh; a new size only where nobody has moved the camera yet.
  useEffect(frame, [name, frame]);
  useEffect(() => {
    if (!free.moved) frame();
    else invalidate();
  }, [width, height, free, frame, invalidate]);

  useLive(() => registerNow(bench, square));
  useEffect(() => tilt.subscribe(() => invalidate()), [tilt, invalidate]);

  useEffect(() => {
    const animate = (change: () => void) => {
      const from = flight.pose() ?? poseOf(bench.view.getState().view);
      change();
      flight.begin(from);
    };
    const move = eyeMover({ bench, eye: free, frame, animate });
    control.current = {
      land: flight.land,
      zoomFree: (factor, at) => {
        free.zoom(factor, at);
        invalidate();
      },
    };
    return bench.eye.serve((wish) => {
      move(wish);
      invalidate();
    });
  }, [bench, control, flight, frame, free, invalidate, poseOf]);

  if (!Orbit) return null;
  return (
    <Orbit
      ref={free.orbit}
      camera={free.camera}
      homeMm={free.homeMm}
      onStart={() => {
        free.moved = true;
        flight.land();
      }}
      // The eye itself is held above the mat by the orbit's own angle.
      onChange={() => free.holdAbove(latest.current.groundMm)}
    />
  );
}

interface FlightProps {
  readonly free: FreeEye;
  readonly square: OrthographicCamera;
  readonly poseOf: (view: View) => EyePose;
  readonly latest: RefObject<{ readonly aspect: number }>;
}

/** The camera that is looked through: that of the view shown, and on the way from one to another a third. */
function useFlight({ free, square, poseOf, latest }: FlightProps) {
  const bench = useBench();
  const view = useView((state) => state.view);
  const set = useThree((state) => state.set);
  const invalidate = useThree((state) => state.invalidate);
  const eye = useMemo(() => Object.assign(new PerspectiveCamera(30), { manual: true }), []);
  const settle = useCallback(
    () => set({ camera: bench.view.getState().view === 'free' ? eye : square }),
    [bench, eye, set, square],
  );
  const flight = useMemo(
    () =>
      createFlight({
        goal: () => poseOf(bench.view.getState().view),
        onTakeOff: () => set({ camera: eye }),
        onStep: invalidate,
        onLanded: () => {
          settle();
          invalidate();
        },
      }),
    [bench, eye, invalidate, poseOf, set, settle],
  );

  const lastPose = useRef<EyePose | null>(null);
  const shownView = useRef(view);
  useLayoutEffect(() => {
    const before = shownView.current;
    shownView.current = view;
    if (before === view) return settle();
    const from = flight.pose() ?? lastPose.current ?? poseOf(before);
    registerNow(bench, square);
    if (lessMotion()) settle();
    flight.begin(from);
  }, [bench, view, square, poseOf, flight, settle]);

  // Before anything else looks through the camera in this frame.
  useFrame(() => {
    const { aspect } = latest.current;
    const { view: now } = bench.view.getState();
    free.camera.aspect = aspect;
    free.camera.updateProjectionMatrix();
    const pose = flight.pose() ?? poseOf(now);
    lastPose.current = pose;
    if (flight.pose() || now === 'free') takePose(eye, pose, aspect);
  }, -1);
  return flight;
}

/** The free view follows an aircraft that is seen to tilt over its mat; a tilted world leaves it as it is. */
function tiltedPose(pose: EyePose, { turn, aboutMm }: TiltState, { view }: Bench): EyePose {
  if (view.getState().tilts !== 'aircraft') return pose;
  const inWorld = ROOT_TURN.clone().multiply(turn).multiply(new Quaternion().copy(ROOT_TURN).invert());
  return turnedPose(pose, inWorld, toWorld(aboutMm, new Vector3()));
}

function registerNow({ view, axis }: Bench, square: OrthographicCamera): void {
  const { view: now } = view.getState();
  if (now !== 'free' && axis.getState().widthPx > 0) registerElevation(square, now, axis.getState());
}
