import { gapAlong } from '../../engine/place/regions';
import type { KeepApart, MovablePart, PlaceBox, PlaceProblem } from '../../engine/place/types';
import type { Lift } from '../../engine/place/whyNot';
import { type Item, itemById } from '../document/edit';
import type { Aircraft } from '../document/types';
import { keepApartRules } from '../fit/keepApart';
import { type PlaceQuestion, placeProblem } from './placeProblem';
import { defaultRule, type PlaceRule, type PlaceSettings } from './placeSettings';

/** A problem that also knows what is forbidden, and all that could be let go. */
export type LiftQuestion =
  | { readonly problem: PlaceProblem; readonly lifts: readonly Lift[] }
  | { readonly fault: string };

/**
 * What could be let go when nothing works: the limits, the keep-apart rules, the leads, the locks, and the bays that parts
 * are bound to. Locked parts take part in the problem with their present place as their one option, and with the places
 * that a lock forbids as options that count only when it is lifted.
 */
export function placeLifts(aircraft: Aircraft, settings: PlaceSettings): LiftQuestion {
  const asking = (item: Item): PlaceRule => settings.rules?.[item.id] ?? defaultRule(aircraft, item);
  const isBound = (item: Item) => 'bayId' in item && item.bayId !== undefined;
  const isHeld = (item: Item) => asking(item).by === 'stay' || isBound(item);
  const heldIds = new Set([...aircraft.parts, ...aircraft.tanks].filter(isHeld).map(({ id }) => id));
  // As if neither locked nor bound; whatever else is asked of where things may go stays asked.
  const loosened: Aircraft = {
    ...aircraft,
    parts: aircraft.parts.map((part) => {
      if (!heldIds.has(part.id)) return part;
      const { bayId: _bay, locked: _locked, ...loose } = part;
      return loose;
    }),
  };
  const rules = Object.fromEntries(Object.entries(settings.rules ?? {}).filter(([id]) => !heldIds.has(id)));
  const wide: PlaceQuestion = placeProblem(loosened, { ...settings, rules });
  if ('fault' in wide) return wide;
  const lifts: Lift[] = [];
  const parts = wide.problem.parts.map((part) => {
    const piece = itemById(aircraft, part.id)!;
    const asked = asking(piece);
    if (asked.by === 'stay') {
      const now = part.options.find(({ id }) => id === part.present.optionId) ?? part.options[0]!;
      const half = now.sizeMm.map((mm) => mm / 2);
      const [x, y, z] = part.present.centreMm;
      const { turnedTo: _turned, ...standing } = now;
      const here = {
        ...standing,
        id: 'locked',
        name: 'its place',
        region: {
          minMm: [x - half[0]!, y - half[1]!, z - half[2]!] as const,
          maxMm: [x + half[0]!, y + half[1]!, z + half[2]!] as const,
        },
      };
      lifts.push({
        id: `lock ${piece.id}`,
        name: piece.name,
        what: 'lock',
        partId: piece.id,
        optionIds: part.options.map(({ id }) => id),
      });
      return { ...part, options: [here, ...part.options], present: { ...part.present, optionId: 'locked' } };
    }
    if (asked.by === 'bays' && isBound(piece)) {
      const beyond = part.options.filter(
        ({ id }) => id !== 'here' && !asked.bayIds.some((bay) => id.split(' ')[1] === bay),
      );
      if (beyond.length > 0) {
        lifts.push({
          id: `bay ${piece.id}`,
          name: piece.name,
          what: 'bay',
          partId: piece.id,
          optionIds: beyond.map(({ id }) => id),
        });
      }
    }
    return part;
  });
  const problem = { ...wide.problem, parts, apart: [...wide.problem.apart, ...asTheyOverlap(parts)] };
  lifts.push(
    { id: 'forward limit', name: 'forward limit', what: 'limit', limits: ['forward'] },
    { id: 'aft limit', name: 'aft limit', what: 'limit', limits: ['aft'] },
  );
  if (problem.lateralMm !== null) {
    lifts.push({ id: 'lateral limit', name: 'lateral limit', what: 'limit', limits: ['left', 'right'] });
  }
  const rulesHeld = new Set(problem.apart.filter(({ gapMm }) => gapMm > 0).map(({ id }) => id));
  keepApartRules(aircraft).forEach(({ why }, index) => {
    const ruleId = `rule ${index}`;
    if (rulesHeld.has(ruleId)) lifts.push({ id: ruleId, name: why, what: 'rule', ruleId });
  });
  for (const { id, name } of problem.leads) lifts.push({ id: `lead ${id}`, name, what: 'lead', leadId: id });
  return { problem, lifts };
}

/** Two locked items that overlap where they are may go on doing so: that is no reason that anybody could let go of. */
function asTheyOverlap(parts: readonly MovablePart[]): KeepApart[] {
  const locked = parts.flatMap(({ id, options }) => {
    const here = options.find((option) => option.id === 'locked');
    return here ? [{ id, box: here.region }] : [];
  });
  const apartMm = (a: PlaceBox, b: PlaceBox) =>
    Math.max(...([0, 1, 2] as const).map((axis) => gapAlong(a, b, axis)));
  return locked.flatMap((a, i) =>
    locked.slice(0, i).flatMap((b): KeepApart[] => {
      const gapMm = apartMm(a.box, b.box);
      return gapMm < 0 ? [{ id: `overlap of ${a.id} and ${b.id}`, a: a.id, b: b.id, gapMm }] : [];
    }),
  );
}
