import type { Entry } from './entry';

/** Mass, its places, and what keeps an aircraft from tipping over. */
export const balanceEntries = [
  {
    id: 'cg',
    word: 'CG',
    also: ['centre of gravity', 'balance point'],
    says: [
      'The point on which the whole aircraft would balance.',
      'Its weight acts as if all of it were there.',
      'Move a heavy thing aft and the CG follows it aft.',
    ],
    related: ['moment', 'band', 'travel'],
  },
  {
    id: 'datum',
    word: 'Datum',
    also: ['zero point'],
    says: [
      'The zero from which all places are measured.',
      'It may be anywhere, as long as it stays there.',
      'The tip of the nose is a usual choice.',
    ],
    related: ['station', 'reference-point'],
  },
  {
    id: 'reference-point',
    word: 'Reference point',
    also: ['measure from'],
    says: [
      'A point on the aircraft that a tape reaches easily.',
      'Any station can be read from it in place of the datum.',
      'The balance stays as it is: only the figures are counted from elsewhere.',
    ],
    related: ['datum', 'station'],
  },
  {
    id: 'station',
    word: 'Station',
    also: ['distance along the aircraft'],
    says: [
      'How far aft of the datum something lies.',
      'A larger station lies nearer to the tail; ahead of the datum it is negative.',
    ],
    related: ['datum', 'buttline', 'waterline', 'arm'],
  },
  {
    id: 'buttline',
    word: 'Buttline',
    also: ['distance from the middle'],
    says: [
      'How far from the middle of the aircraft something lies.',
      'To the pilot’s right it is positive, to the left negative.',
    ],
    related: ['station', 'waterline', 'sideways'],
  },
  {
    id: 'waterline',
    word: 'Waterline',
    also: ['height'],
    says: ['How high above the datum something lies.', 'Below the datum it is negative.'],
    related: ['station', 'buttline', 'thrust-line'],
  },
  {
    id: 'arm',
    word: 'Arm',
    also: ['lever'],
    says: [
      'The distance from a chosen point to where a mass lies.',
      'Twice the arm does as much as twice the mass.',
    ],
    related: ['moment', 'station'],
  },
  {
    id: 'moment',
    word: 'Moment',
    also: ['mass × arm'],
    says: [
      'Mass times arm: how strongly something turns the aircraft about a point.',
      'All moments added up, divided by the whole mass, give the station of the CG.',
    ],
    related: ['arm', 'cg', 'ballast'],
  },
  {
    id: 'band',
    word: 'Target band',
    also: ['CG limits', 'band'],
    parts: ['forward limit', 'aft limit'],
    says: [
      'The stations between which the CG must stay.',
      'It runs from the forward limit to the aft limit.',
      'Behind the aft limit is the dangerous side.',
    ],
    related: ['cg', 'tail-heavy', 'margin'],
  },
  {
    id: 'tail-heavy',
    word: 'Tail-heavy and nose-heavy',
    also: [],
    parts: ['tail-heavy', 'nose-heavy'],
    says: [
      'Tail-heavy: the CG lies behind the target band.',
      'The nose then wants to rise, and the pilot may not be able to hold it.',
      'Nose-heavy: the CG lies ahead of the band; it needs speed and much up elevator.',
    ],
    related: ['band', 'margin', 'ballast'],
  },
  {
    id: 'ballast',
    word: 'Ballast',
    also: ['lead', 'nose weight'],
    says: [
      'Dead weight that is put aboard only to move the CG.',
      'The farther out it lies, the less of it will do.',
      'Moving what is aboard already costs nothing, so try that first.',
    ],
    related: ['moment', 'arm', 'inertia'],
  },
  {
    id: 'sideways',
    word: 'Sideways balance',
    also: ['lateral balance', 'roll-off', 'lateral offset'],
    says: [
      'How far to one side the CG lies.',
      'With it to the right, the right wing is heavy and wants to drop.',
      'A little weight at the tip of the other wing puts it right.',
    ],
    related: ['cg', 'buttline', 'ballast'],
  },
  {
    id: 'inertia',
    word: 'Moment of inertia',
    also: ['inertia'],
    parts: ['radius of gyration'],
    says: [
      'How hard it is to set the aircraft turning about an axis, or to stop it.',
      'A mass counts by its distance squared: twice as far out, four times as much.',
      'The radius of gyration is the distance at which all the mass would do the same.',
      'Two aircraft may balance alike and still turn quite differently.',
    ],
    related: ['arm', 'gyro', 'ballast'],
  },
  {
    id: 'gyro',
    word: 'Gyro',
    also: ['flight controller', 'stabiliser'],
    says: [
      'A sensor that feels how fast the aircraft turns and moves the controls against it.',
      'Near the CG and square to the axes it feels the turn and little else.',
    ],
    related: ['cg', 'inertia'],
  },
  {
    id: 'bare-airframe',
    word: 'Bare airframe',
    also: ['structure'],
    says: [
      'The structure with nothing carried in it.',
      'Put it on scales: what it weighs and where it balances are the best start.',
    ],
    related: ['cg', 'ready-to-fly'],
  },
  {
    id: 'ready-to-fly',
    word: 'Ready to fly',
    also: ['all up', 'all-up mass'],
    says: [
      'The mass of everything aboard with the fuel that is shown.',
      'The airframe, the parts and the liquid are all in it.',
    ],
    related: ['bare-airframe', 'dry-full'],
  },
] as const satisfies readonly Entry[];
