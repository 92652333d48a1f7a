import { switchesOf } from '../airframe/loadSwitches';
import { BARE_AIRFRAME_ID } from '../document/ids';
import { shownText } from '../document/names';
import type { Aircraft } from '../document/types';
import type { LessonBench } from './bench';

/** So little is no change: what a figure may differ by after it was taken there and back. */
const SAME = 1e-6;

interface Named {
  readonly id: string;
  readonly name: string;
}

/**
 * What is otherwise on the bench than it was, apart from what a step is about: the name of the first such thing, or null. Only
 * what bears on the figures counts, not names or notes.
 */
export function astray(from: LessonBench, now: LessonBench, subjects: ReadonlySet<string>): string | null {
  const free = withTwins(from.aircraft, subjects);
  return (
    itemAstray(from.aircraft, now.aircraft, free) ??
    (free.has('fuel') || near(from.fuelFraction, now.fuelFraction) ? null : 'the fuel') ??
    (free.has('attitude') || sameFigures(from.attitude, now.attitude) ? null : 'the way it is held') ??
    switchAstray(from, now, free)
  );
}

function withTwins({ parts, tanks }: Aircraft, subjects: ReadonlySet<string>): ReadonlySet<string> {
  const twins = [...parts, ...tanks].flatMap(({ id, twinId }) =>
    twinId && subjects.has(id) ? [twinId] : [],
  );
  return new Set([...subjects, ...twins]);
}

function itemAstray(before: Aircraft, after: Aircraft, free: ReadonlySet<string>): string | null {
  for (const key of ['parts', 'tanks', 'structure'] as const) {
    const found = firstDifferent<Named>(before[key], after[key], free);
    if (found) return `“${shownText(found.name)}”`;
  }
  if (!free.has(BARE_AIRFRAME_ID) && !sameFigures(before.bareAirframe, after.bareAirframe))
    return 'the bare airframe';
  return free.has('fuel-kind') || sameFigures(before.fuel, after.fuel) ? null : 'the fuel';
}

function firstDifferent<T extends Named>(
  before: readonly T[],
  after: readonly T[],
  free: ReadonlySet<string>,
): T | undefined {
  if (before === after) return undefined;
  const were = new Map(before.map((item) => [item.id, item]));
  const are = new Map(after.map((item) => [item.id, item]));
  return (
    after.find((item) => !free.has(item.id) && !sameFigures(were.get(item.id), item)) ??
    before.find((item) => !free.has(item.id) && !are.has(item.id))
  );
}

function switchAstray(from: LessonBench, now: LessonBench, free: ReadonlySet<string>): string | null {
  const found = switchesOf(now.aircraft).find(
    ({ id, positions: [first] }) =>
      !free.has(`switch ${id}`) && (from.positions[id] ?? first?.id) !== (now.positions[id] ?? first?.id),
  );
  return found ? `“${shownText(found.name)}”` : null;
}

const near = (a: number, b: number) => Math.abs(a - b) <= SAME * Math.max(1, Math.abs(a));

/** Whether two values hold the same figures; words apart from choices among a few (ids, kinds) have no say. */
function sameFigures(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a === 'number' && typeof b === 'number') return near(a, b);
  if (typeof a !== 'object' || typeof b !== 'object' || !a || !b) return false;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...keys].every(
    (key) =>
      WORDS.has(key) || sameFigures((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
  );
}

/** Fields that say nothing of balance. */
const WORDS: ReadonlySet<string> = new Set([
  'name',
  'notes',
  'locked',
  'inTheOpen',
  'weighedOn',
  'role',
  'bayId',
  'mayTurn',
  'gyro',
]);
