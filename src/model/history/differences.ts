import type { Vec3 } from '../../engine/geometry/types';
import type { Aircraft } from '../document/types';

/** What became of one thing between two states of an aircraft. */
export interface Difference {
  readonly id: string;
  readonly name: string;
  readonly kind: 'added' | 'removed' | 'changed';
  /** What it was called before, where that is another name. */
  readonly wasName: string | null;
  /** How far it was moved, mm; null where it was not, or has no place of its own. */
  readonly movedMm: Vec3 | null;
  /** How much heavier it became, g; 0 where its mass is its shape's. Of a thing that came or went its whole mass. */
  readonly byG: number;
  /** Whether anything else of it changed too. */
  readonly otherwise: boolean;
}

export interface Differences {
  /** What is carried before the airframe, in the order of the lists. */
  readonly things: readonly Difference[];
  /** Members of the document, other than those lists, that are not alike. */
  readonly members: readonly (keyof Aircraft)[];
}

interface Thing {
  readonly id: string;
  readonly name: string;
}

const lists = ['parts', 'tanks', 'structure'] as const;

/** What has to be done to `before` to make it `after`. */
export function differencesOf(before: Aircraft, after: Aircraft): Differences {
  const things = lists.flatMap((list) => betweenLists(before[list], after[list]));
  const keys = new Set([...Object.keys(before), ...Object.keys(after)]) as ReadonlySet<keyof Aircraft>;
  const members = [...keys].filter(
    (key) => !lists.some((list) => list === key) && !alike(before[key], after[key]),
  );
  return { things, members };
}

function betweenLists(before: readonly Thing[], after: readonly Thing[]): readonly Difference[] {
  const was = new Map(before.map((thing) => [thing.id, thing]));
  const is = new Set(after.map(({ id }) => id));
  return [
    ...after.flatMap((thing) => {
      const old = was.get(thing.id);
      return old ? changeOf(old, thing) : [whole(thing, 'added')];
    }),
    ...before.filter(({ id }) => !is.has(id)).map((thing) => whole(thing, 'removed')),
  ];
}

const whole = (thing: Thing, kind: 'added' | 'removed'): Difference => ({
  id: thing.id,
  name: thing.name,
  kind,
  wasName: null,
  movedMm: null,
  byG: massOf(thing),
  otherwise: false,
});

/** Members that are told by themselves. */
const spoken: ReadonlySet<string> = new Set(['name', 'positionMm', 'massG', 'emptyMassG']);

function changeOf(before: Thing, after: Thing): readonly Difference[] {
  if (alike(before, after)) return [];
  const [from, to] = [placeOf(before), placeOf(after)];
  const movedMm =
    from && to && !alike(from, to) ? ([0, 1, 2] as const).map((axis) => to[axis] - from[axis]) : null;
  const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])];
  return [
    {
      id: after.id,
      name: after.name,
      kind: 'changed',
      wasName: before.name === after.name ? null : before.name,
      movedMm: movedMm as Vec3 | null,
      byG: massOf(after) - massOf(before),
      otherwise: keys.some(
        (key) => !spoken.has(key) && !alike(Reflect.get(before, key), Reflect.get(after, key)),
      ),
    },
  ];
}

const placeOf = (thing: object): Vec3 | null => ('positionMm' in thing ? (thing.positionMm as Vec3) : null);

function massOf(thing: object): number {
  const massG = 'massG' in thing ? thing.massG : 'emptyMassG' in thing ? thing.emptyMassG : 0;
  return typeof massG === 'number' ? massG : 0;
}

/** Plain data that would be written alike, whatever the order of its members. */
function alike(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || !a || !b) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...keys].every((key) => alike(Reflect.get(a, key), Reflect.get(b, key)));
}
