import { anglesOf, poseRotation, rotationProduct } from '../../engine/geometry/rotation';
import type { Mat3, Pose } from '../../engine/geometry/types';
import { poseOf } from '../airframe/poses';
import type { Item } from '../document/edit';

/** How something stands: the angles of its pose, degrees. */
export type Angles = Pick<Pose, 'yawDeg' | 'pitchDeg' | 'rollDeg'>;

/** A way to turn something from how it stands; null is not at all. The name tells it from others of the same thing. */
export interface Turn {
  readonly name: string;
  readonly angles: Angles | null;
}

const AS_IT_STANDS: Turn = { name: '', angles: null };

/** Turns about the vertical, after a part has been tipped about an axis of the aircraft: together all 24 ways up. */
const ABOUT = [0, 90, 180, 270] as const;
const TIPPED: readonly Angles[] = [
  { yawDeg: 0, pitchDeg: 90, rollDeg: 0 },
  { yawDeg: 0, pitchDeg: -90, rollDeg: 0 },
  { yawDeg: 0, pitchDeg: 0, rollDeg: 90 },
  { yawDeg: 0, pitchDeg: 0, rollDeg: -90 },
  { yawDeg: 0, pitchDeg: 0, rollDeg: 180 },
];
const UPRIGHT: Angles = { yawDeg: 0, pitchDeg: 0, rollDeg: 0 };

/**
 * The ways in which a part may be turned, as it says: by right angles about the vertical, or on end and on its side too, about
 * its own origin and the aircraft's axes. As it stands first. A tank is never turned, for its liquid would lie otherwise.
 */
export function turnsOf(item: Item): readonly Turn[] {
  if (!('role' in item) || item.mayTurn === undefined) return [AS_IT_STANDS];
  const now = poseRotation(poseOf(item));
  const tips = item.mayTurn === 'any' ? [UPRIGHT, ...TIPPED] : [UPRIGHT];
  return tips.flatMap((tip) =>
    ABOUT.map((yawDeg): Turn => {
      if (tip === UPRIGHT && yawDeg === 0) return AS_IT_STANDS;
      const name = `turned ${yawDeg} ${tip.pitchDeg} ${tip.rollDeg}`;
      const { pitchDeg, rollDeg } = item;
      if (tip === UPRIGHT)
        return { name, angles: { yawDeg: within180(item.yawDeg + yawDeg), pitchDeg, rollDeg } };
      const about = rotationProduct(rotationOf({ ...UPRIGHT, yawDeg }), rotationOf(tip));
      return { name, angles: wholeAngles(anglesOf(rotationProduct(about, now))) };
    }),
  );
}

/** The item so turned, about its own origin. */
export const turned = <T extends Item>(item: T, angles: Angles | null | undefined): T => {
  if (!angles) return item;
  const { yawDeg, pitchDeg, rollDeg } = angles;
  return { ...item, yawDeg, pitchDeg, rollDeg };
};

const rotationOf = (angles: Angles): Mat3 => poseRotation({ positionMm: [0, 0, 0], ...angles });

/** Within ±180°, so that turning again and again stays within what a file may say. */
const within180 = (deg: number) => deg - 360 * Math.round(deg / 360);

/** Free of what sines and cosines leave in the last digits. */
const wholeAngles = ({ yawDeg, pitchDeg, rollDeg }: Angles): Angles => ({
  yawDeg: tidy(yawDeg),
  pitchDeg: tidy(pitchDeg),
  rollDeg: tidy(rollDeg),
});

const tidy = (deg: number) => Math.round(deg * 1e6) / 1e6 + 0;
