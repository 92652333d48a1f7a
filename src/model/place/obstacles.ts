import { gapAlong, straightGap } from '../../engine/place/regions';
import type { KeepApart, MovablePart, Obstacle, PlaceBox } from '../../engine/place/types';
import { itemExtent, pieceExtent } from '../airframe/extent';
import { inLoadState } from '../airframe/loadSwitches';
import { elementPieces } from '../airframe/pieces';
import { type Standing, standingStructure } from '../airframe/solids';
import { type Item, itemById } from '../document/edit';
import type { Aircraft } from '../document/types';
import { clashesOf } from '../fit/clash';
import { keepApartFaults, keepApartRules } from '../fit/keepApart';
import { flyingPositions } from './loadCases';
import { partBox } from './placeOptions';

/** Slanting solids are seen as the boxes of so many of their pieces at most. */
const MOST_BOXES = 8;

/** Everything that stays: parts, tanks, and the structure in every load state that flies, legs up and legs down. */
export function obstaclesOf(aircraft: Aircraft, moves: (id: string) => boolean): Obstacle[] {
  const items: readonly Item[] = [...aircraft.parts, ...aircraft.tanks].filter(({ id }) => !moves(id));
  const seen = new Set<Standing['solid']>();
  const structure = flyingPositions(aircraft).flatMap((positions) =>
    standingStructure(inLoadState(aircraft, positions)).filter(({ solid }) => {
      const isNew = !seen.has(solid);
      seen.add(solid);
      return isNew;
    }),
  );
  return [
    ...items.map((item) => ({ id: item.id, name: item.name, ...itemExtent(item) })),
    ...structure.flatMap((element, k) =>
      boxesOf(element).map((box, i) => ({
        id: `structure ${element.id} ${k} ${i}`,
        name: element.name,
        ...box,
      })),
    ),
    ...foamOf(aircraft),
  ];
}

/** Blocks that are cut out for what stands in them now: nothing else goes in there without a knife. */
const foamOf = (aircraft: Aircraft): Obstacle[] =>
  aircraft.structure.flatMap((element) =>
    element.kind === 'block' && element.cuttable
      ? elementPieces(element).map((piece) => ({
          id: `foam ${piece.id}`,
          name: element.name,
          ...pieceExtent(piece),
        }))
      : [],
  );

/** The boxes of a solid's convex pieces, or the one around it where they are too many to be worth it. */
function boxesOf({ solid }: Standing): PlaceBox[] {
  const { convexes, minMm, maxMm } = solid;
  if (convexes.length === 1 || convexes.length > MOST_BOXES) return [{ minMm, maxMm }];
  return convexes.map((convex) => ({ minMm: convex.minMm, maxMm: convex.maxMm }));
}

/** The id in the file behind an obstacle's. */
const sourceOf = (id: string): string => id.split(' ')[1] ?? id;

/**
 * Leave for pairs to be as close as things stand today. What touches something now may touch anything that moves, also
 * after a swap; a part and an item that stays may overlap with their boxes as far as now, as long as they themselves do not
 * clash; two items that are never aboard together may be in one place.
 */
export function asCloseAsNow(
  aircraft: Aircraft,
  moving: readonly MovablePart[],
  obstacles: readonly Obstacle[],
  gapMm: number,
): KeepApart[] {
  const boxes = moving.map(({ id }) => ({ id, ...partBox(itemById(aircraft, id)!) }));
  const apartMm = (a: PlaceBox, b: PlaceBox) =>
    Math.max(...([0, 1, 2] as const).map((axis) => gapAlong(a, b, axis)));
  const closest = boxes.map((box) =>
    Math.min(
      ...boxes.filter((other) => other !== box).map((other) => Math.max(0, apartMm(box, other))),
      gapMm,
    ),
  );
  const pairs = boxes.flatMap((box, i) => [
    ...boxes.slice(0, i).flatMap((other, j): KeepApart[] => {
      const near = Math.min(closest[i]!, closest[j]!);
      if (neverTogether(aircraft, box.id, other.id)) return [allowed(box.id, other.id, -1e6)];
      return near < gapMm ? [allowed(box.id, other.id, near)] : [];
    }),
    ...obstacles.flatMap((other): KeepApart[] => {
      const nowMm = apartMm(box, other);
      if (neverTogether(aircraft, box.id, other.id)) return [allowed(box.id, other.id, -1e6)];
      if (nowMm >= gapMm) return [];
      const clashes = clashesOf(aircraft, box.id).some(
        ({ otherId }) => otherId === sourceOf(other.id) || otherId === other.id,
      );
      return clashes ? [] : [allowed(box.id, other.id, nowMm)];
    }),
  ]);
  return pairs;
}

const allowed = (a: string, b: string, gapMm: number): KeepApart => ({
  id: `as close as ${a} and ${b}`,
  a,
  b,
  gapMm,
});

/** Whether no load state that flies has both aboard. */
const neverTogether = (aircraft: Aircraft, a: string, b: string): boolean =>
  (aircraft.switches ?? []).length > 0 &&
  flyingPositions(aircraft).every((positions) => {
    const { parts, tanks } = inLoadState(aircraft, positions);
    const aboard = (id: string) =>
      parts.some((part) => part.id === id) || tanks.some((tank) => tank.id === id);
    const isItem = itemById(aircraft, a) && itemById(aircraft, b);
    return isItem ? !(aboard(a) && aboard(b)) : false;
  });

/** Kept in hand, so that no rounding of a place breaks a rule, mm. */
const SPARE_MM = 0.01;

/** The document's rules between roles or items, spelled out for pairs of which one at least may move, in a straight line. */
export function apartRules(aircraft: Aircraft, moves: (id: string) => boolean): KeepApart[] {
  const items = [...aircraft.parts, ...aircraft.tanks];
  const meant = (word: string) =>
    items.some(({ id }) => id === word)
      ? items.filter(({ id }) => id === word)
      : items.filter((item) => 'role' in item && item.role === word);
  const broken = keepApartFaults(aircraft);
  // Boxes are nearer than what is in them: where the items themselves keep the rule now, their boxes may stay as near.
  const least = (a: Item, b: Item, atLeastMm: number) =>
    broken.some(({ aId, bId }) => [aId, bId].sort().join(' ') === [a.id, b.id].sort().join(' '))
      ? atLeastMm
      : Math.min(atLeastMm, straightGap(itemExtent(a), itemExtent(b)));
  return keepApartRules(aircraft).flatMap(({ between, and, atLeastMm }, index) =>
    meant(between).flatMap((a) =>
      meant(and).flatMap((b): KeepApart[] =>
        a.id !== b.id && (moves(a.id) || moves(b.id))
          ? [
              {
                id: `rule ${index}`,
                a: a.id,
                b: b.id,
                gapMm: least(a, b, atLeastMm + SPARE_MM),
                by: 'straight',
              },
            ]
          : [],
      ),
    ),
  );
}
