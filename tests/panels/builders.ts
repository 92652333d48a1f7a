import type { Vec3 } from '../../src/engine/geometry/types';
import { blankAircraft } from '../../src/model/document/blank';
import type { Aircraft, Part } from '../../src/model/document/types';

const level = { yawDeg: 0, pitchDeg: 0, rollDeg: 0 };

/** A box of 40 × 30 × 20 mm. */
export const part = (id: string, massG: number, positionMm: Vec3, role: Part['role'] = 'other'): Part => ({
  id,
  name: id,
  role,
  shape: { kind: 'box', lengthMm: 40, widthMm: 30, heightMm: 20 },
  massG,
  positionMm,
  ...level,
});

/** A brim-full box tank of 200 ml at station 500, buttline 60, with water that leaves at 60 ml/min. */
export const waterTank = (emptyMassG: number): Aircraft => ({
  ...blankAircraft(),
  fuel: {
    kind: 'water',
    name: 'Water',
    densityGPerMl: 1,
    use: 'dump',
    share: 'volume',
    flow: { idleMlPerMin: 0, fullMlPerMin: 60 },
    profile: { name: 'Dump', phases: [{ name: 'Valve open', durationS: 300, throttlePct: 100 }] },
    reservePct: 0,
  },
  tanks: [
    {
      id: 'tank',
      name: 'Tank',
      shape: { kind: 'box', lengthMm: 100, widthMm: 50, heightMm: 40 },
      positionMm: [500, 60, 0],
      ...level,
      emptyMassG,
      startMl: null,
      unusableMl: 0,
      feeds: 'outlet',
      rank: 1,
    },
  ],
});
