/** The arrangements that an aircraft can begin from. */
export const arrangementIds = [
  'low-wing',
  'mid-wing',
  'high-wing',
  't-tail',
  'v-tail',
  'twin-boom',
  'canard',
  'three-surface',
  'delta',
  'flying-wing',
  'biplane',
  'twin-engined',
  'powered-glider',
] as const;
export type ArrangementId = (typeof arrangementIds)[number];

/** How an arrangement is laid out, and the proportions that it starts from. Common practice, no source, unless said. */
export interface Arrangement {
  readonly id: ArrangementId;
  readonly name: string;
  readonly says: string;
  /** Of one wing: span²/area. */
  readonly aspectRatio: number;
  readonly taper: number;
  /** How far the tip's leading edge lies behind the root's, of the root chord. */
  readonly sweepShare: number;
  readonly dihedralDeg: number;
  readonly thicknessPct: number;
  /** Where the wing meets the body, of half the body's height: −1 its underside, 1 its top. */
  readonly wingHeight: number;
  /** Of the span. */
  readonly lengthShare: number;
  /** The wing's leading edge at the root, of the length. */
  readonly wingAtShare: number;
  /**
   * How much farther aft the wing of an engined aircraft stands than that of an electric one, whose pack is heavy and can
   * be moved: a share of where the wing is.
   */
  readonly engineShift: number;
  /** Width and height of the body's middle, of the root of the wing area. */
  readonly bodyShare: readonly [width: number, height: number];
  readonly tail: 'conventional' | 't' | 'v' | 'booms' | 'none';
  readonly fin: 'centre' | 'booms' | 'tips' | 'none';
  /** Area of a surface ahead of the wing, of the wing's; 0 for none. */
  readonly foreplaneShare: number;
  readonly wings: 1 | 2;
  readonly drive: 'nose' | 'rear' | 'nacelles';
  readonly wheels: 'tail' | 'nose' | 'none';
}

const conventional = {
  aspectRatio: 6,
  taper: 0.75,
  sweepShare: 0.12,
  dihedralDeg: 3,
  thicknessPct: 12,
  wingHeight: 0,
  lengthShare: 0.78,
  wingAtShare: 0.25,
  engineShift: -0.09,
  bodyShare: [0.17, 0.21],
  tail: 'conventional',
  fin: 'centre',
  foreplaneShare: 0,
  wings: 1,
  drive: 'nose',
  wheels: 'tail',
} as const;

const list: readonly Arrangement[] = [
  {
    ...conventional,
    id: 'low-wing',
    name: 'Low wing',
    says: 'Tail behind, wing under the body',
    dihedralDeg: 4,
    wingHeight: -0.7,
  },
  { ...conventional, id: 'mid-wing', name: 'Mid wing', says: 'Tail behind, wing through the body' },
  {
    ...conventional,
    id: 'high-wing',
    name: 'High wing',
    says: 'Tail behind, wing on top of the body',
    dihedralDeg: 2,
    wingHeight: 0.8,
    wheels: 'nose',
  },
  {
    ...conventional,
    id: 't-tail',
    name: 'T-tail',
    says: 'Tailplane on top of the fin',
    tail: 't',
    engineShift: -0.15,
    wingHeight: -0.6,
    dihedralDeg: 4,
    wheels: 'nose',
  },
  {
    ...conventional,
    id: 'v-tail',
    name: 'V-tail',
    says: 'Two surfaces for fin and tailplane',
    tail: 'v',
    engineShift: -0.15,
    fin: 'none',
    wingHeight: 0.5,
    wheels: 'none',
  },
  {
    ...conventional,
    id: 'twin-boom',
    name: 'Twin boom',
    says: 'Pusher between two booms',
    aspectRatio: 7.5,
    lengthShare: 0.72,
    wingAtShare: 0.39,
    wingHeight: 0.6,
    dihedralDeg: 2,
    bodyShare: [0.2, 0.22],
    tail: 'booms',
    engineShift: 0.18,
    fin: 'booms',
    drive: 'rear',
    wheels: 'nose',
  },
  {
    ...conventional,
    id: 'canard',
    name: 'Canard',
    says: 'Small surface ahead, pusher',
    aspectRatio: 7,
    taper: 0.6,
    sweepShare: 0.75,
    lengthShare: 0.72,
    wingAtShare: 0.61,
    bodyShare: [0.16, 0.17],
    tail: 'none',
    fin: 'tips',
    foreplaneShare: 0.18,
    drive: 'rear',
    wheels: 'nose',
  },
  {
    ...conventional,
    id: 'three-surface',
    name: 'Three surfaces',
    says: 'Canard, wing and tail',
    wingAtShare: 0.33,
    lengthShare: 0.85,
    foreplaneShare: 0.09,
    wheels: 'nose',
  },
  {
    ...conventional,
    id: 'delta',
    name: 'Delta',
    says: 'No tailplane, wing of large root',
    aspectRatio: 2.2,
    taper: 0.15,
    sweepShare: 0.85,
    thicknessPct: 8,
    dihedralDeg: 0,
    lengthShare: 1.1,
    wingAtShare: 0.26,
    bodyShare: [0.14, 0.13],
    tail: 'none',
    drive: 'rear',
    wheels: 'none',
  },
  {
    ...conventional,
    id: 'flying-wing',
    name: 'Flying wing',
    says: 'Swept wing alone, fins at its tips',
    aspectRatio: 7,
    taper: 0.55,
    sweepShare: 1.25,
    thicknessPct: 11,
    dihedralDeg: 1,
    lengthShare: 0.36,
    wingAtShare: 0.31,
    bodyShare: [0.17, 0.15],
    tail: 'none',
    fin: 'tips',
    drive: 'rear',
    wheels: 'none',
  },
  {
    ...conventional,
    id: 'biplane',
    name: 'Biplane',
    says: 'Two wings, one above the other',
    aspectRatio: 5.2,
    taper: 1,
    sweepShare: 0,
    lengthShare: 0.86,
    wingAtShare: 0.31,
    wingHeight: -0.75,
    dihedralDeg: 2,
    bodyShare: [0.15, 0.18],
    wings: 2,
    engineShift: -0.02,
  },
  {
    ...conventional,
    id: 'twin-engined',
    name: 'Two motors',
    says: 'A motor in a nacelle on each wing',
    aspectRatio: 7,
    wingAtShare: 0.3,
    wingHeight: -0.6,
    drive: 'nacelles',
    wheels: 'nose',
  },
  {
    ...conventional,
    id: 'powered-glider',
    name: 'Powered glider',
    says: 'Slender wing, folding propeller',
    aspectRatio: 15,
    taper: 0.5,
    sweepShare: 0.15,
    thicknessPct: 11,
    lengthShare: 0.48,
    wingAtShare: 0.28,
    wingHeight: 0.6,
    bodyShare: [0.11, 0.13],
    wheels: 'none',
  },
];

export const arrangements: readonly Arrangement[] = list;

/** An arrangement by its id. */
export function arrangementOf(id: ArrangementId): Arrangement {
  const found = list.find((each) => each.id === id);
  if (!found) throw new Error(`There is no arrangement "${id}".`);
  return found;
}
