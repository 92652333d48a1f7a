import { switchesOf } from '../airframe/loadSwitches';
import { BARE_AIRFRAME_ID } from '../document/ids';
import { shownText } from '../document/names';
import type { Aircraft } from '../document/types';
import { changed, type LessonBench } from './bench';
import { subjectOf } from './goals';
import type { Change } from './types';

/** So little is no change: what a figure may differ by after it was taken there and back. */
const SAME = 1e-6;

interface Named {
  readonly id: string;
  readonly name: string;
}

/** What of a thing a step may change, by its id; all of it where the step takes it out or moves it whole. */
type Free = ReadonlyMap<string, ReadonlySet<string> | 'all'>;

/**
 * What is otherwise on the bench than it was, apart from what a step changes: the name of the first such thing, or null. Only
 * what bears on the figures counts, not names or notes.
 */
export function astray(from: LessonBench, now: LessonBench, way: readonly Change[]): string | null {
  const free = freeIn(from.aircraft, way);
  return (
    thingAstray(from, now, way, free) ??
    (free.has('fuel') || near(from.fuelFraction, now.fuelFraction) ? null : 'the fuel') ??
    (free.has('attitude') || sameFigures(from.attitude, now.attitude) ? null : 'the way it is held') ??
    switchAstray(from, now, free)
  );
}

/** Fields that go with a change: a mass that is typed says where it comes from, and how sure it is. */
function fieldsOf({ do: done }: Change): readonly string[] | 'all' {
  switch (done) {
    case 'place':
      return ['positionMm'];
    case 'mass':
      return ['massG', 'emptyMassG', 'massFrom', 'plusMinusG'];
    case 'plusMinus':
      return ['plusMinusG', 'plusMinusMm', 'massFrom', 'sizeFrom'];
    case 'start':
      return ['startMl'];
    case 'takeOut':
    case 'shiftStructure':
    case 'fuel':
    case 'hold':
    case 'switch':
    case 'solved':
      return 'all';
  }
}

function freeIn({ parts, tanks }: Aircraft, way: readonly Change[]): Free {
  const free = new Map<string, ReadonlySet<string> | 'all'>();
  for (const change of way) {
    const id = subjectOf(change);
    const [before, fields] = [free.get(id), fieldsOf(change)];
    free.set(id, before === 'all' || fields === 'all' ? 'all' : new Set([...(before ?? []), ...fields]));
  }
  for (const { id, twinId } of [...parts, ...tanks]) {
    const ofTwin = free.get(id);
    if (twinId !== undefined && ofTwin && !free.has(twinId)) free.set(twinId, ofTwin);
  }
  return free;
}

/** What goes along with the change, as a tank that fed the one taken out, is as the change leaves it. */
function thingAstray(from: LessonBench, now: LessonBench, way: readonly Change[], free: Free): string | null {
  const found = itemAstray(from.aircraft, now.aircraft, free);
  if (found === null) return null;
  return itemAstray(changed(from, way).aircraft, now.aircraft, free) && found;
}

function itemAstray(before: Aircraft, after: Aircraft, free: Free): string | null {
  for (const key of ['parts', 'tanks', 'structure'] as const) {
    const found = firstDifferent<Named>(before[key], after[key], free);
    if (found) return `“${shownText(found.name)}”`;
  }
  const same = sameFigures(before.bareAirframe, after.bareAirframe, free.get(BARE_AIRFRAME_ID));
  if (!same) return 'the bare airframe';
  return sameFigures(before.fuel, after.fuel) ? null : 'the fuel';
}

function firstDifferent<T extends Named>(
  before: readonly T[],
  after: readonly T[],
  free: Free,
): T | undefined {
  if (before === after) return undefined;
  const were = new Map(before.map((item) => [item.id, item]));
  const are = new Map(after.map((item) => [item.id, item]));
  const same = (a: T | undefined, b: T | undefined, id: string) => sameFigures(a, b, free.get(id));
  return (
    after.find((item) => !same(were.get(item.id), item, item.id)) ??
    before.find((item) => !are.has(item.id) && free.get(item.id) !== 'all')
  );
}

function switchAstray(from: LessonBench, now: LessonBench, free: Free): string | null {
  const found = switchesOf(now.aircraft).find(
    ({ id, positions: [first] }) =>
      !free.has(`switch ${id}`) && (from.positions[id] ?? first?.id) !== (now.positions[id] ?? first?.id),
  );
  return found ? `“${shownText(found.name)}”` : null;
}

const near = (a: number, b: number) => Math.abs(a - b) <= SAME * Math.max(1, Math.abs(a));

/**
 * Whether two values hold the same figures; words apart from choices among a few (ids, kinds) have no say, nor have the fields
 * that are free.
 */
function sameFigures(a: unknown, b: unknown, free?: ReadonlySet<string> | 'all'): boolean {
  if (free === 'all' || Object.is(a, b)) return true;
  if (typeof a === 'number' && typeof b === 'number') return near(a, b);
  if (typeof a !== 'object' || typeof b !== 'object' || !a || !b) return false;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...keys].every(
    (key) =>
      WORDS.has(key) ||
      free?.has(key) ||
      sameFigures((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]),
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
