import type { Vec3 } from '../../engine/geometry/types';
import { downFromAttitude } from '../../engine/liquid/attitude';
import { LEVEL } from '../balance/balance';

/** Which way is down for an aircraft held at a pitch, nose up +. */
export const downAtPitch = (pitchDeg: number): Vec3 =>
  pitchDeg === 0 ? LEVEL : downFromAttitude({ pitchDeg, rollDeg: 0, forwardG: 0, sideG: 0 });
