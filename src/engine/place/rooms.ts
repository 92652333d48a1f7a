import type { Vec3 } from '../geometry/types';
import type { BalanceRow } from './balanceRows';
import type { PackItem } from './lineBound';
import { type Packing, packForward } from './packing';
import {
  centreRange,
  fitsRegion,
  gapBetween,
  mayMeet,
  mayStandDiagonally,
  obstacleOccupant,
  sizeOf,
  surelyAlongAxis,
  widest,
} from './regions';
import type { PlaceOption, PlaceProblem } from './types';

/** A part in one of its options, by their places in the lists. */
export interface Choice {
  readonly part: number;
  readonly option: number;
}

/** Choices that can get in each other's way; choices of different rooms cannot, but for rules between them. */
export type Room = readonly Choice[];

export const optionOf = (problem: PlaceProblem, { part, option }: Choice): PlaceOption =>
  problem.parts[part]!.options[option]!;

/**
 * Splits all choices into rooms: the connected parts of "may meet". Rules that ask for more than the clearance do not join
 * rooms: between rooms they are left to the whole program, which a bound may do.
 */
export function roomsOf(problem: PlaceProblem): Room[] {
  const choices = problem.parts.flatMap(({ options }, part) =>
    options.flatMap((option, k) => (fitsRegion(option) ? [{ part, option: k }] : [])),
  );
  const roomOf = choices.map((_, i) => i);
  const rootOf = (i: number): number => (roomOf[i] === i ? i : rootOf(roomOf[i]!));
  choices.forEach((a, i) => {
    for (let j = 0; j < i; j++) {
      const b = choices[j]!;
      if (a.part !== b.part && mayMeet(optionOf(problem, a), optionOf(problem, b), problem.clearanceMm)) {
        roomOf[rootOf(i)] = rootOf(j);
      }
    }
  });
  const rooms = new Map<number, Choice[]>();
  choices.forEach((choice, i) => {
    const root = rootOf(i);
    rooms.set(root, [...(rooms.get(root) ?? []), choice]);
  });
  return [...rooms.values()];
}

/** Packs some choices of one room as far forward, or aft, as weights per part ask. */
export interface RoomPacker {
  /**
   * The most that Σ weight·(station of the box's middle) can be over all ways to pack the choices; weights all ≥ 0 or all
   * ≤ 0. `centresMm` is such a packing when one was found. Null when they do not fit.
   */
  pack(
    choices: readonly Choice[],
    weights: readonly number[],
  ): { readonly most: number; readonly centresMm: readonly Vec3[] | null } | null;
}

const mirrorX = (item: PackItem): PackItem => ({
  ...item,
  region: {
    minMm: [-item.region.maxMm[0], item.region.minMm[1], item.region.minMm[2]],
    maxMm: [-item.region.minMm[0], item.region.maxMm[1], item.region.maxMm[2]],
  },
});

/** A packer that gives up a packing after so many nodes and then still gives a bound. */
export function roomPacker(problem: PlaceProblem, mostNodes: number): RoomPacker {
  const gapOf = gapBetween(problem);
  const walls = problem.obstacles.map((box) => ({ id: box.id, ...obstacleOccupant(box) }));
  return {
    pack(choices, weights) {
      const options = choices.map((choice) => optionOf(problem, choice));
      const ids = choices.map(({ part }) => problem.parts[part]!.id);
      const near = walls.filter((wall) =>
        options.some((option, i) => mayMeet(option, wall, widest(gapOf(ids[i]!, wall.id)))),
      );
      const names = [...ids, ...near.map(({ id }) => id)];
      const occupants = [...options, ...near];
      const gap = (i: number, j: number) => {
        if (i >= options.length && j >= options.length) return Number.NEGATIVE_INFINITY;
        const pair = gapOf(names[i]!, names[j]!);
        if (pair.straightMm === 0) return pair.axisMm;
        return surelyAlongAxis(pair, mayStandDiagonally(occupants[i]!, occupants[j]!));
      };
      // What should go aft is packed forward in the mirror.
      const aft = weights.some((weight) => weight > 0);
      const items: PackItem[] = [
        ...options.map((option, i) => ({
          region: option.region,
          sizeMm: option.sizeMm,
          perMm: Math.abs(weights[i]!),
        })),
        ...near.map((wall) => ({ region: wall.region, sizeMm: sizeOf(wall.region), perMm: 0 })),
      ];
      const packing: Packing | null = packForward(aft ? items.map(mirrorX) : items, gap, mostNodes);
      if (!packing) return null;
      let most = -packing.bound;
      options.forEach((option, i) => {
        const half = option.sizeMm[0] / 2;
        most -= Math.abs(weights[i]!) * half;
      });
      const centresMm = packing.cornersMm?.slice(0, options.length).map(([x, y, z], i): Vec3 => {
        const [dx, dy, dz] = options[i]!.sizeMm;
        return [aft ? -x - dx / 2 : x + dx / 2, y + dy / 2, z + dz / 2];
      });
      return { most, centresMm: centresMm ?? null };
    },
  };
}

/** The most that one choice can give to a row, whatever else is there, g·mm. */
export function mostAlone(problem: PlaceProblem, row: BalanceRow, choice: Choice): number {
  const option = optionOf(problem, choice);
  const weight = row.perPart[choice.part] ?? 0;
  const { lowMm, highMm } = centreRange(option, row.axis);
  return weight * (weight > 0 ? highMm : lowMm) + row.perOption[choice.part]![choice.option]!;
}

/** The most that choices in one room can give to a row, packed where that can be told, g·mm. Null: they do not fit. */
export function mostPacked(
  problem: PlaceProblem,
  packer: RoomPacker,
  row: BalanceRow,
  choices: readonly Choice[],
): number | null {
  const weights = choices.map(({ part }) => row.perPart[part] ?? 0);
  const oneWay = weights.every((w) => w >= 0) || weights.every((w) => w <= 0);
  if (row.axis === 0 && oneWay) {
    const packed = packer.pack(choices, weights);
    return (
      packed && choices.reduce((sum, { part, option }) => sum + row.perOption[part]![option]!, packed.most)
    );
  }
  return choices.reduce((sum, choice) => sum + mostAlone(problem, row, choice), 0);
}
