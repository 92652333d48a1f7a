import * as v from 'valibot';
import {
  about,
  angleDeg,
  choice,
  direction,
  flag,
  id,
  label,
  list,
  loadFactor,
  massG,
  placeMm,
  pointMm,
  record,
  sizeMm,
  sizeOrZeroMm,
} from './fields';

/** A room where parts may be mounted: a box, however it stands, given by its middle. */
export const bay = record(
  {
    id,
    name: label,
    lengthMm: sizeMm,
    widthMm: sizeMm,
    heightMm: sizeMm,
    positionMm: about(pointMm, 'its middle'),
    yawDeg: angleDeg,
    pitchDeg: angleDeg,
    rollDeg: angleDeg,
    standsOnMm: about(
      v.optional(placeMm),
      'the waterline of the floor, shelf or strap face that parts in it stand on; a board in its lower half, or its lowest side, when left out',
    ),
  },
  'a room where parts may be mounted',
);

/** A rectangular opening in a hull. */
export const hatch = record(
  {
    id,
    name: label,
    centreMm: about(pointMm, 'the middle of the opening, on the hull'),
    lengthMm: about(sizeMm, 'fore and aft, mm; athwart for an opening in the nose or the tail'),
    widthMm: about(sizeMm, 'square to the length, mm'),
    normal: about(direction, 'out of the hull, as a direction'),
  },
  'an opening in the hull that parts go in through',
);

/** Two parts, or all of two roles, that must be some distance from each other. */
export const keepApartRule = record(
  {
    between: about(id, 'a role, or the id of a part or tank'),
    and: about(id, 'a role, or the id of a part or tank'),
    atLeastMm: sizeOrZeroMm,
    why: label,
    commonPractice: about(flag, 'a habit of builders, without a published source'),
  },
  'things that must be kept apart',
);

/** A lead from part to part. Without waypoints it runs straight, or along the hull's wall. */
export const lead = record(
  {
    id,
    name: label,
    from: about(id, 'the part or tank that it starts at'),
    to: about(id, 'the part or tank that it ends at'),
    fromAtMm: about(
      v.optional(pointMm),
      'where it leaves, in that part’s own frame; its origin when left out',
    ),
    toAtMm: about(
      v.optional(pointMm),
      'where it arrives, in that part’s own frame; its origin when left out',
    ),
    lengthMm: about(v.optional(sizeMm), 'the length owned, mm; made to measure when left out'),
    massGPerM: about(massG, 'g/m'),
    route: about(
      v.optional(choice(['straight', 'wall'])),
      'how it runs: straight when left out; by the wall, each end goes square to the hull’s inner face and the lead follows it, or runs straight by the waypoints from one foot to the other',
    ),
    waypointsMm: list(pointMm),
  },
  'a lead from part to part',
);

export const loadFactors = record(
  { ahead: loadFactor, up: loadFactor, side: loadFactor },
  'load factors that the fixings are held to, multiples of g',
);
