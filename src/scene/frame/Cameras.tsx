import { useFrame, useThree } from '@react-three/fiber';
import { type RefObject, useCallback, useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import { OrthographicCamera, PerspectiveCamera, Quaternion, Vector3 } from 'three';
import { elevationOfGaze, gazeOfElevation, panElevation, zoomElevation } from '../../interaction/elevation';
import type { Bench } from '../../store/bench';
import type { EyeMove, Gaze } from '../../store/eye';
import { createPiece } from '../../store/piece';
import { useBench, useCommitted, useLive, useView } from '../../store/react';
import { eased, lessMotion } from './eased';
import { registerElevation, STAND_OFF_MM } from './elevationCamera';
import { type EyePose, mixedPose, poseOfElevation, poseOfFree, takePose, turnedPose } from './eyePose';
import { ROOT_TURN, toWorld } from './frame';
import { frameAircraft, LOWEST_EYE, orbitBy, zoomBy } from './freeCamera';
import { gazeOfFree, standForGaze } from './freeGaze';
import type { OrbitHandle } from './Orbit';
import { useTilt } from './tilt';
import { cornersOnce, useGroundMm } from './useGround';
import { useScenePiece } from './useScenePiece';
import { fitToView } from './useStageBox';

// The orbit is wanted by a hand, not by the first picture.
const orbitPiece = createPiece(
  () => import('./Orbit'),
  (module) => module.default,
);
const FLIGHT_MS = 420;
/** A degree of turning shifts an elevation by so much, px. */
const PX_PER_DEG = 4;

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
  const view = useView((state) => state.view);
  const bench = useBench();
  const tilt = useTilt();
  const groundMm = useGroundMm();
  const name = useCommitted((aircraft) => aircraft.name);
  const set = useThree((state) => state.set);
  const invalidate = useThree((state) => state.invalidate);
  const { width, height } = useThree((state) => state.size);
  const orbit = useRef<OrbitHandle>(null);
  const Orbit = useScenePiece(orbitPiece, 'What turns the free view');
  const moved = useRef(false);
  /** Turned by the orbit in a level world; what is looked through is `eye`. */
  const free = useMemo(() => Object.assign(new PerspectiveCamera(30), { manual: true }), []);
  const eye = useMemo(() => Object.assign(new PerspectiveCamera(30), { manual: true }), []);
  const square = useMemo(() => Object.assign(new OrthographicCamera(), { manual: true }), []);
  const home = useMemo(() => new Vector3(), []);
  const flight = useRef<{ pose: EyePose; stop: () => void } | null>(null);
  const latest = useRef({ groundMm, aspect: width / height });
  latest.current = { groundMm, aspect: width / height };

  const target = useCallback(() => orbit.current?.target ?? home, [home]);
  const goal = useCallback(
    (of: string): EyePose => {
      if (of !== 'free') return poseOfElevation(square, STAND_OFF_MM);
      const pose = poseOfFree(free, target());
      const { turn, aboutMm } = tilt.getState();
      if (bench.view.getState().tilts !== 'aircraft') return pose;
      const inWorld = ROOT_TURN.clone().multiply(turn).multiply(new Quaternion().copy(ROOT_TURN).invert());
      return turnedPose(pose, inWorld, toWorld(aboutMm, new Vector3()));
    },
    [bench, free, square, target, tilt],
  );

  const frame = useCallback(() => {
    home.copy(frameAircraft(free, cornersOnce(bench.document.current()), latest.current.aspect));
    orbit.current?.target.copy(home);
    orbit.current?.update();
    moved.current = false;
    invalidate();
  }, [bench, free, home, invalidate]);

  const land = useCallback(() => {
    if (!flight.current) return;
    flight.current.stop();
    flight.current = null;
    set({ camera: bench.view.getState().view === 'free' ? eye : square });
    invalidate();
  }, [bench, eye, set, square, invalidate]);

  /** From how it is looked at now to where the view shown leads, wherever that moves to meanwhile. */
  const fly = useCallback(
    (from: EyePose) => {
      flight.current?.stop();
      flight.current = null;
      if (lessMotion()) return land();
      set({ camera: eye });
      const flying = { pose: from, stop: () => {} };
      flight.current = flying;
      flying.stop = eased(
        0,
        1,
        FLIGHT_MS,
        (share) => {
          flying.pose = mixedPose(from, goal(bench.view.getState().view), share);
          invalidate();
        },
        land,
      );
    },
    [bench, eye, goal, invalidate, land, set],
  );

  const lastPose = useRef<EyePose | null>(null);
  const shownView = useRef(view);
  useLayoutEffect(() => {
    const before = shownView.current;
    shownView.current = view;
    if (before === view) return set({ camera: view === 'free' ? eye : square });
    const from = flight.current?.pose ?? lastPose.current ?? goal(before);
    registerNow(bench, square);
    if (lessMotion()) set({ camera: view === 'free' ? eye : square });
    fly(from);
  }, [bench, set, view, eye, square, goal, fly]);

  // A new aircraft is framed afresh; a new size only where nobody has moved the camera yet.
  useEffect(frame, [name, frame]);
  useEffect(() => {
    if (!moved.current) frame();
    else invalidate();
  }, [width, height, frame, invalidate]);

  useLive(() => registerNow(bench, square));
  useEffect(() => tilt.subscribe(() => invalidate()), [tilt, invalidate]);

  // Before anything else looks through the camera in this frame.
  useFrame(() => {
    const now = bench.view.getState().view;
    free.aspect = latest.current.aspect;
    free.updateProjectionMatrix();
    const pose = flight.current?.pose ?? goal(now);
    lastPose.current = pose;
    if (flight.current || now === 'free') takePose(eye, pose, latest.current.aspect);
  }, -1);

  useEffect(() => {
    const animate = (change: () => void) => {
      const from = flight.current?.pose ?? goal(bench.view.getState().view);
      change();
      orbit.current?.update();
      fly(from);
    };
    const standSo = (gaze: Gaze) => {
      moved.current = true;
      standForGaze(free, home, gaze, latest.current.aspect);
      orbit.current?.target.copy(home);
      orbit.current?.update();
    };
    const look = (gaze: Gaze, flies: boolean) => {
      const { view: now } = bench.view.getState();
      // On the way from another view already: its flight leads to wherever this is.
      const change = () => {
        if (now === 'free') standSo(gaze);
        else bench.axis.setState(elevationOfGaze(bench.axis.getState(), now, gaze));
      };
      if (!flies || shownView.current !== now || flight.current) change();
      else animate(change);
      invalidate();
    };
    const serve = (move: EyeMove) => {
      if (move.kind === 'look') return look(move.gaze, move.flies);
      const { view: now } = bench.view.getState();
      const axes = bench.axis.getState();
      const middle = [axes.widthPx / 2, axes.heightPx / 2] as const;
      if (move.kind === 'fit' || move.kind === 'reset') {
        animate(() => (now === 'free' ? frame() : fitToView(bench)));
      } else if (now === 'free') {
        moved.current = true;
        animate(() => {
          if (move.kind === 'zoom') zoomBy(free, target(), move.factor, target());
          else orbitBy(free, target(), move.rightDeg, move.upDeg, LOWEST_EYE);
        });
      } else if (move.kind === 'zoom') {
        bench.axis.setState(zoomElevation(axes, now, move.factor, middle));
      } else {
        bench.axis.setState(panElevation(axes, now, [-move.rightDeg * PX_PER_DEG, move.upDeg * PX_PER_DEG]));
      }
      invalidate();
    };
    control.current = {
      land,
      zoomFree: (factor, at) => {
        moved.current = true;
        const about = new Vector3(at[0], at[1], 0.5).unproject(free).sub(free.position).normalize();
        const away = target().clone().sub(free.position);
        const ahead = away.clone().normalize();
        about.multiplyScalar(away.length() / Math.max(about.dot(ahead), 0.2)).add(free.position);
        zoomBy(free, target(), factor, about);
        orbit.current?.update();
        invalidate();
      },
    };
    return bench.eye.serve(serve, () => {
      const { view: now } = bench.view.getState();
      const axes = bench.axis.getState();
      if (now === 'free') return gazeOfFree(free, target(), latest.current.aspect);
      return axes.widthPx > 0 ? gazeOfElevation(axes, now) : null;
    });
  }, [bench, control, fly, frame, free, goal, home, invalidate, land, target]);

  /** The eye is held above the mat by the angle; what it looks at must not sink below it either. */
  const holdAboveMat = () => {
    const at = orbit.current?.target;
    if (at) at.y = Math.max(at.y, latest.current.groundMm);
  };
  if (!Orbit) return null;
  return (
    <Orbit
      ref={orbit}
      camera={free}
      homeMm={home}
      onStart={() => {
        moved.current = true;
        land();
      }}
      onChange={holdAboveMat}
    />
  );
}

function registerNow({ view, axis }: Bench, square: OrthographicCamera): void {
  const { view: now } = view.getState();
  if (now !== 'free' && axis.getState().widthPx > 0) registerElevation(square, now, axis.getState());
}
