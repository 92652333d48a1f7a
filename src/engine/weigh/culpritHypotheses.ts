import type { MeasuredBody } from '../balance/uncertainty';
import type { Vec3 } from '../geometry/types';
import { distance } from '../geometry/vec3';
import type { ThoughtOf } from './wholeResiduals';

/** Something aboard that may have been entered wrongly. */
export interface Suspect extends MeasuredBody {
  /** Nobody weighed it: its mass is typical, or comes from a density. */
  readonly notWeighed: boolean;
  /** The place that was typed for it; left out where its place follows from a shape. */
  readonly typedMm?: Vec3;
  /** Whether its mass was typed as one figure. */
  readonly massTyped: boolean;
}

/** An item that might have been forgotten: where it would be is not known. */
export interface Forgotten {
  readonly id: string;
  readonly massG: number;
  readonly sigmaG: number;
}

export type CulpritKind =
  | 'not-weighed'
  | 'mirrored'
  | 'mass-times-ten'
  | 'mass-unit'
  | 'place-times-ten'
  | 'place-unit'
  | 'sign'
  | 'not-aboard'
  | 'forgotten';

/** One thing that may have gone wrong, and the list as it would then have to read. */
export interface Hypothesis {
  readonly kind: CulpritKind;
  readonly id: string;
  /** How likely it is before the scales have spoken, against the others. */
  readonly weight: number;
  readonly things: readonly ThoughtOf[];
  /** The coordinate that it is about; null for a mass, or for all of a place. */
  readonly axis: 0 | 1 | 2 | null;
  /** What the entered figure is to be multiplied by; null where that is not what is wrong. */
  readonly factor: number | null;
}

/** Grams in an ounce (1/16 of 453.592 37 g) and millimetres in an inch: what a figure typed in the wrong unit is off by. */
const OUNCE = 453.59237 / 16;
const INCH = 25.4;

/** What a mass that nobody weighed may be off by, and one that was weighed badly: one sigma as a share of it. */
const GUESSED = 0.4;
/** Before the scales have spoken. Common sense, no source: guessed masses go wrong more often than weighed ones. */
const weights = {
  guessed: 1,
  weighed: 0.1,
  mirrored: 1,
  slip: 0.5,
  sign: 0.5,
  notAboard: 0.3,
  forgotten: 3,
} as const;
/** What is carried sits near the middle: one sigma across and up, as a share of the aircraft's width and height. */
const NEAR_MIDDLE = 0.05;
/** Two items nearer than this stand in one place, mm. */
const TAKEN_MM = 5;
/** A place that turns out nearer than this to what was entered is the same place, mm. */
const SAME_MM = 0.5;

/** Room that a place may be out by and still be aboard, mm. */
const ROOM_MM = 20;

/** The box that the aircraft fills. */
export interface Extent {
  readonly minMm: Vec3;
  readonly maxMm: Vec3;
}

/** Every single thing that may have gone wrong. */
export function hypotheses(
  suspects: readonly Suspect[],
  thought: readonly ThoughtOf[],
  forgotten: readonly Forgotten[],
  extent: Extent,
): readonly Hypothesis[] {
  const replaced = (id: string, change: Partial<ThoughtOf>) =>
    thought.map((thing) => (thing.id === id ? { ...thing, ...change } : thing));
  const middle = extent.minMm.map((low, axis) => (low + extent.maxMm[axis]!) / 2) as unknown as Vec3;
  const wide = extent.maxMm.map((high, axis) => high - extent.minMm[axis]!) as unknown as Vec3;
  const anywhere: Vec3 = [wide[0] / Math.sqrt(12), wide[1] * NEAR_MIDDLE, wide[2] * NEAR_MIDDLE];
  return [
    ...suspects.flatMap((suspect) => {
      const thing = thought.find(({ id }) => id === suspect.id);
      return thing
        ? [
            ...ofMass(suspect, thing, replaced),
            ...ofPlace(suspect, thing, replaced).filter(within(extent)).filter(isFree),
          ]
        : [];
    }),
    ...forgotten.map(
      ({ id, massG, sigmaG }): Hypothesis => ({
        kind: 'forgotten',
        id,
        weight: weights.forgotten / forgotten.length,
        things: [...thought, { id: `forgotten ${id}`, massG, sigmaG, positionMm: middle, sigmaMm: anywhere }],
        axis: null,
        factor: null,
      }),
    ),
  ];
}

type Replaced = (id: string, change: Partial<ThoughtOf>) => readonly ThoughtOf[];

function ofMass(
  suspect: Suspect,
  { id, massG, sigmaG }: ThoughtOf,
  replaced: Replaced,
): readonly Hypothesis[] {
  const plain = { id, axis: null } as const;
  const scaled = (kind: CulpritKind, factor: number, weight: number): Hypothesis => ({
    ...plain,
    kind,
    factor,
    weight,
    things: replaced(id, { massG: massG * factor, sigmaG: sigmaG * Math.min(1, factor) }),
  });
  return [
    {
      ...plain,
      kind: 'not-weighed',
      factor: null,
      weight: suspect.notWeighed ? weights.guessed : weights.weighed,
      things: replaced(id, { sigmaG: Math.hypot(sigmaG, GUESSED * massG) }),
    },
    scaled('not-aboard', 0, weights.notAboard),
    ...(suspect.massTyped
      ? [
          scaled('mass-times-ten', 10, weights.slip / 2),
          scaled('mass-times-ten', 0.1, weights.slip / 2),
          scaled('mass-unit', OUNCE, weights.slip / 2),
          scaled('mass-unit', 1 / OUNCE, weights.slip / 2),
        ]
      : []),
  ];
}

/** A slip whose mending would put the item outside the aircraft did not happen. */
const within =
  ({ minMm, maxMm }: Extent) =>
  (hypothesis: Hypothesis): boolean =>
    placeIn(hypothesis).every((coordinate, axis) => {
      const slack = ROOM_MM + 0.02 * (maxMm[axis]! - minMm[axis]!);
      return coordinate >= minMm[axis]! - slack && coordinate <= maxMm[axis]! + slack;
    });

/** Nor one that would put it where another item of the list is already: the left one of a pair is not the right one mirrored. */
function isFree(hypothesis: Hypothesis): boolean {
  const at = placeIn(hypothesis);
  const others = hypothesis.things.filter(({ id }) => id !== hypothesis.id);
  return others.every(({ positionMm }) => distance(positionMm, at) >= TAKEN_MM);
}

/** Where the item in question would be. */
const placeIn = ({ id, things }: Hypothesis): Vec3 => things.find((thing) => thing.id === id)!.positionMm;

function ofPlace(
  { typedMm }: Suspect,
  { id, positionMm }: ThoughtOf,
  replaced: Replaced,
): readonly Hypothesis[] {
  if (!typedMm) return [];
  const along = (
    kind: CulpritKind,
    axis: 0 | 1 | 2 | null,
    factor: number,
    weight: number,
  ): readonly Hypothesis[] => {
    const by = typedMm.map((coordinate, at) =>
      axis === null || at === axis ? coordinate * (factor - 1) : 0,
    ) as unknown as Vec3;
    const changed = by.filter((part) => Math.abs(part) >= SAME_MM).length;
    if (changed === 0 || (axis === null && changed < 2)) return [];
    const [x, y, z] = positionMm;
    // What is not the same left and right is turned over as well, as the other one of a pair would be.
    const moved: Vec3 = kind === 'mirrored' ? [x, -y, z] : [x + by[0], y + by[1], z + by[2]];
    return [{ kind, id, axis, factor, weight, things: replaced(id, { positionMm: moved }) }];
  };
  const slips = ([0, 1, 2] as const).flatMap((axis) => [
    ...along('place-times-ten', axis, 10, weights.slip / 4),
    ...along('place-times-ten', axis, 0.1, weights.slip / 4),
    ...along('place-unit', axis, INCH, weights.slip / 4),
    ...along('place-unit', axis, 1 / INCH, weights.slip / 4),
  ]);
  return [
    ...along('mirrored', 1, -1, weights.mirrored),
    ...along('sign', 0, -1, weights.sign),
    ...along('sign', 2, -1, weights.sign),
    ...slips,
    ...along('place-unit', null, INCH, weights.slip / 4),
    ...along('place-unit', null, 1 / INCH, weights.slip / 4),
  ];
}
