import type { Entry } from './entry';

/** Wings, and what they have to do with balance. */
export const wingEntries = [
  {
    id: 'chord',
    word: 'Chord',
    also: [],
    parts: ['root chord', 'tip chord'],
    says: [
      'The length of the wing from front edge to rear edge, along the flight.',
      'At the body it is the root chord, at the end the tip chord.',
    ],
    related: ['mac', 'sweep'],
  },
  {
    id: 'mac',
    word: 'MAC',
    also: ['mean aerodynamic chord'],
    parts: ['LEMAC', '% MAC'],
    says: [
      'The mean aerodynamic chord: one chord that stands for the whole wing.',
      'Wide parts of the wing count for more in it than narrow ones.',
      'LEMAC is where its front edge lies.',
      'A place at 25 % MAC lies a quarter of the MAC behind that.',
    ],
    related: ['chord', 'neutral-point', 'margin'],
  },
  {
    id: 'neutral-point',
    word: 'Neutral point',
    also: ['NP', 'estimated neutral point'],
    says: [
      'If the CG lay here, a gust from below would neither raise nor lower the nose.',
      'The CG must lie ahead of it, or the aircraft will not settle by itself.',
      'Wing, tail and body fix where it is; packs and fuel do not move it.',
    ],
    related: ['margin', 'mac', 'cg'],
  },
  {
    id: 'margin',
    word: 'Static margin',
    also: ['margin', 'stability margin'],
    says: [
      'How far the CG lies ahead of the neutral point, in % of the MAC.',
      'More of it flies more steadily; less of it answers more quickly.',
      'Below zero the aircraft turns away from level flight by itself.',
    ],
    related: ['neutral-point', 'mac', 'band'],
  },
  {
    id: 'decalage',
    word: 'Decalage',
    also: ['longitudinal dihedral', 'incidence'],
    says: [
      'The angle between wing and tail, seen from the side.',
      'The wing is set nose up against the tail by it.',
      'A CG farther ahead needs more of it to keep the nose up.',
    ],
    related: ['neutral-point', 'margin', 'thrust-line'],
  },
  {
    id: 'sweep',
    word: 'Sweep',
    also: ['tip behind root', 'sweepback'],
    says: [
      'How far the tip of a wing lies behind its root.',
      'Sweep carries the MAC aft, and the neutral point with it.',
    ],
    related: ['mac', 'chord'],
  },
  {
    id: 'thrust-line',
    word: 'Thrust line',
    also: ['line of thrust', 'down thrust'],
    says: [
      'The line along which propeller or jet push or pull.',
      'When it passes above the CG, more throttle pushes the nose down.',
    ],
    related: ['cg', 'waterline', 'decalage'],
  },
] as const satisfies readonly Entry[];
