import type {
  Aircraft,
  BallastFreeZone,
  Lead,
  Part,
  StructurePiece,
} from '../../../src/model/document/types';
import { randomFrom } from '../../randomFrom';
import { aircraftOf, boxBlock } from '../aircraft';

/** A box of a part as stated, before any turn, mm. */
export interface GridPart {
  readonly id: string;
  readonly massG: number;
  readonly sizeMm: readonly [number, number, number];
  readonly stationMm: number;
  /** Any side down. */
  readonly turns: boolean;
}

/** A case as plain figures: what is tried by hand knows nothing but these. */
export interface GridCase {
  readonly aircraft: Aircraft;
  readonly parts: readonly GridPart[];
  /** Inside of a square tube, mm. */
  readonly tube: { readonly fromMm: number; readonly toMm: number; readonly halfMm: number };
  readonly frame: { readonly massG: number; readonly stationMm: number };
  readonly band: { readonly forwardMm: number; readonly aftMm: number };
  readonly lead: {
    readonly lengthMm: number;
    readonly waypointMm: number | null;
    readonly gPerMm: number;
  } | null;
  readonly spot: {
    readonly stationMm: number;
    readonly stepG: number;
    readonly mostG: number;
    /** Length of the stack for each gram, mm. */
    readonly perG: number;
    /** What a zone kept free of ballast leaves of the stack either way from its middle, mm; infinite without one. */
    readonly halfMm: number;
  };
}

/** g/mm³ of lead, and the section of the stack, mm. */
const LEAD = 0.01134;
const STACK_MM = 20;
const SKIN_MM = 2;

/** Two or three parts in a square tube, a lead between the first two, ballast at the nose, and a band off where it balances. */
export function gridCase(seed: number): GridCase {
  const random = randomFrom(seed);
  const between = (low: number, high: number) => low + (high - low) * random();
  const whole = (low: number, high: number) => Math.floor(between(low, high + 1));
  const tube = { fromMm: 0, toMm: 400, halfMm: 32 };
  const count = whole(2, 3);
  // Of three the third has parts so light that mostly only ballast brings it in.
  const isLight = seed % 3 === 2;
  let at = 70;
  const parts = Array.from({ length: count }, (_, i): GridPart => {
    const sizeMm = [whole(30, 56), whole(20, 40), whole(20, 30)] as const;
    at += sizeMm[0] / 2 + whole(4, 40);
    const part = {
      id: `part-${i}`,
      massG: isLight ? whole(10, 50) : whole(40, 300),
      sizeMm,
      stationMm: at,
      turns: random() < 0.5,
    };
    at += sizeMm[0] / 2;
    return part;
  });
  const frame = { massG: whole(500, 1500), stationMm: whole(200, 320) };
  const totalG = frame.massG + parts.reduce((sum, part) => sum + part.massG, 0);
  const momentGmm =
    frame.massG * frame.stationMm + parts.reduce((sum, part) => sum + part.massG * part.stationMm, 0);
  const offMm = isLight ? between(8, 24) : between(-6, 22);
  const aftMm = Math.round(momentGmm / totalG - offMm);
  const band = { forwardMm: aftMm - 12, aftMm };
  const [a, b] = [parts[0]!, parts[1]!];
  const lead =
    random() < 0.7
      ? {
          lengthMm: Math.round(Math.abs(a.stationMm - b.stationMm) + between(20, 120)),
          waypointMm: random() < 0.4 ? Math.round((a.stationMm + b.stationMm) / 2) : null,
          gPerMm: 0.04,
        }
      : null;
  const halfMm = random() < 0.3 ? whole(2, 20) : Number.POSITIVE_INFINITY;
  const spot = { stationMm: 30, stepG: 5, mostG: 250, perG: 1 / (LEAD * STACK_MM * STACK_MM), halfMm };
  const figures = { parts, tube, frame, band, lead, spot };
  return { aircraft: aircraftFor(figures), ...figures };
}

/** The same with another thing in the place of the first part: a part may be one of two. */
export function withOther(one: GridCase, massG: number, lengthMm: number): GridCase {
  const [first, ...rest] = one.parts;
  const other: GridPart = { ...first!, massG, sizeMm: [lengthMm, first!.sizeMm[1], first!.sizeMm[2]] };
  const figures = { ...one, parts: [other, ...rest] };
  return { ...figures, aircraft: aircraftFor(figures) };
}

/** A box behind the middle of the stack, as wide as the tube. */
const hotZone = ({ stationMm, halfMm }: GridCase['spot']): BallastFreeZone => ({
  id: 'hot',
  name: 'Hot wall',
  positionMm: [stationMm + halfMm + 10, 0, 0],
  lengthMm: 20,
  widthMm: 60,
  heightMm: 60,
});

function aircraftFor({ parts, tube, frame, band, lead, spot }: Omit<GridCase, 'aircraft'>): Aircraft {
  const outer = 2 * (tube.halfMm + SKIN_MM);
  const section = (stationMm: number) => ({
    stationMm,
    widthMm: outer,
    heightMm: outer,
    waterlineMm: 0,
    roundness: 0,
  });
  const base = aircraftOf(
    [boxBlock('frame', [frame.stationMm, 0, 400], { by: 'weighed', massG: frame.massG })],
    parts.map(
      ({ id, massG, sizeMm: [lengthMm, widthMm, heightMm], stationMm, turns }): Part => ({
        id,
        name: id,
        role: 'payload',
        shape: { kind: 'box', lengthMm, widthMm, heightMm },
        massG,
        positionMm: [stationMm, 0, 0],
        yawDeg: 0,
        pitchDeg: 0,
        rollDeg: 0,
        ...(turns ? { mayTurn: 'any' } : {}),
      }),
    ),
  );
  const hull: StructurePiece = {
    kind: 'fuselage',
    id: 'tube',
    name: 'Tube',
    sides: 'centre',
    buttlineMm: 0,
    sections: [section(tube.fromMm - SKIN_MM), section(tube.toMm + SKIN_MM)],
    skinMm: SKIN_MM,
    mass: { by: 'weighed', massG: 0 },
  };
  const wire: Lead[] = lead
    ? [
        {
          id: 'wire',
          name: 'Wire',
          from: parts[0]!.id,
          to: parts[1]!.id,
          lengthMm: lead.lengthMm,
          massGPerM: lead.gPerMm * 1000,
          waypointsMm: lead.waypointMm === null ? [] : [[lead.waypointMm, 0, 0]],
        },
      ]
    : [];
  return {
    ...base,
    structure: [...base.structure, hull],
    name: 'Dunnock',
    targetBand: { by: 'station', ...band },
    lateralToleranceMm: 0,
    keepApart: [],
    leads: wire,
    ...(Number.isFinite(spot.halfMm) ? { ballastFree: [hotZone(spot)] } : {}),
    ballastSpots: [
      {
        id: 'nose',
        name: 'Nose',
        positionMm: [spot.stationMm, 0, 0],
        stepG: spot.stepG,
        mostG: spot.mostG,
        lengthMm: 56,
        widthMm: STACK_MM,
        heightMm: STACK_MM,
      },
    ],
  };
}
