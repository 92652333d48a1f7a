import type { Aircraft, Bay, Part } from '../../../src/model/document/types';
import { aircraftOf, boxBlock } from '../aircraft';

/** A bay square to the axes, from its ends. */
const bay = (id: string, fromMm: number, toMm: number): Bay => ({
  id,
  name: id,
  lengthMm: toMm - fromMm,
  widthMm: 60,
  heightMm: 50,
  positionMm: [(fromMm + toMm) / 2, 0, 0],
  yawDeg: 0,
  pitchDeg: 0,
  rollDeg: 0,
});

const part = (id: string, role: Part['role'], massG: number, lengthMm: number, stationMm: number): Part => ({
  id,
  name: id,
  role,
  shape: { kind: 'box', lengthMm, widthMm: 50, heightMm: 40 },
  massG,
  positionMm: [stationMm, 0, 0],
  yawDeg: 0,
  pitchDeg: 0,
  rollDeg: 0,
});

/** An invented airframe of one heavy block with two bays, and four parts in them. The band is 20 mm wide. */
export function redshank(aftMm: number): Aircraft {
  return {
    ...aircraftOf(
      [boxBlock('frame', [600, 0, 300], { by: 'weighed', massG: 2000 })],
      [
        part('pack', 'energy', 400, 120, 700),
        part('camera', 'payload', 250, 80, 810),
        part('receiver', 'radio', 40, 60, 200),
        part('pump', 'other', 120, 70, 300),
      ],
    ),
    name: 'Redshank',
    targetBand: { by: 'station', forwardMm: aftMm - 20, aftMm },
    lateralToleranceMm: 3,
    bays: [bay('nose-bay', 100, 400), bay('rear-bay', 620, 900)],
    keepApart: [],
    ballastSpots: [
      { id: 'nose', name: 'Nose', positionMm: [20, 0, 0], stepG: 5, mostG: 400 },
      { id: 'tail', name: 'Tail', positionMm: [1400, 0, 0], stepG: 5, mostG: 200 },
    ],
  };
}
