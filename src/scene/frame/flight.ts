import { eased, lessMotion } from './eased';
import { type EyePose, mixedPose } from './eyePose';

const FLIGHT_MS = 420;

/** The way of the eye from how it looked at the aircraft to how it will. */
export interface Flight {
  /** How it looks on its way; null where it is on none. */
  pose(): EyePose | null;
  /** Flies to the goal, wherever that moves to meanwhile; who asked for less motion is there at once. */
  begin(from: EyePose): void;
  /** Ends it where it leads. */
  land(): void;
}

interface FlightSetting {
  /** Where it leads, asked at each step. */
  readonly goal: () => EyePose;
  readonly onTakeOff: () => void;
  readonly onStep: () => void;
  readonly onLanded: () => void;
}

export function createFlight({ goal, onTakeOff, onStep, onLanded }: FlightSetting): Flight {
  let flying: { pose: EyePose; stop: () => void } | null = null;
  const land = () => {
    if (!flying) return;
    flying.stop();
    flying = null;
    onLanded();
  };
  return {
    pose: () => flying?.pose ?? null,
    land,
    begin(from) {
      flying?.stop();
      flying = null;
      if (lessMotion()) return;
      onTakeOff();
      const way = { pose: from, stop: () => {} };
      flying = way;
      const show = (share: number) => {
        way.pose = mixedPose(from, goal(), share);
        onStep();
      };
      way.stop = eased(0, 1, FLIGHT_MS, show, land);
    },
  };
}
