import type { Pose } from '../../../src/engine/geometry/types';
import type { Shape } from '../../../src/engine/mass/shapes';
import type { FoundCase } from '../../foundCases';

const level = { yawDeg: 0, pitchDeg: 0, rollDeg: 0 };

/** Shapes and poses of two things that overlap. */
export const clearingFound: readonly FoundCase<[Shape, Shape, Pose, Pose]>[] = [
  {
    story:
      'At the end of the way out the overlap of two pieces was a mere touch: still seen, and no way left to go.',
    values: [
      {
        kind: 'frustum',
        lengthMm: 41.91707629810269,
        frontDiameterMm: 5.208325326442436,
        rearDiameterMm: 3.103451119536639,
      },
      {
        kind: 'loft',
        sections: [
          {
            xMm: -20,
            widthMm: 2.176247564577813,
            heightMm: 31.022775694005237,
            centreYMm: 0,
            centreZMm: 0,
            roundness: 1,
          },
          {
            xMm: 0,
            widthMm: 31.022775694005237,
            heightMm: 2.176247564577813,
            centreYMm: 3,
            centreZMm: 1,
            roundness: 2.6342369959728033e-210,
          },
          { xMm: 25, widthMm: 4, heightMm: 6, centreYMm: 0, centreZMm: -2, roundness: 0.2 },
        ],
      },
      {
        positionMm: [7.4e-323, 59.99999999999992, 1.6480716881547978e-302],
        yawDeg: -2.0940330414116383e-159,
        pitchDeg: -1.88333474621357e-301,
        rollDeg: -179.99999999999957,
      },
      { ...level, positionMm: [0, 0, 0], yawDeg: -0.5494340607727359 },
    ],
  },
];
