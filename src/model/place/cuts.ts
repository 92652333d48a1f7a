import { optionAt } from '../../engine/place/optionAt';
import { centreRange, fitsRegion } from '../../engine/place/regions';
import type { Arrangement, MovablePart, PlaceOption, PlaceProblem } from '../../engine/place/types';
import { itemById } from '../document/edit';
import type { Aircraft } from '../document/types';
import type { Refusal } from './fitRefusals';
import { itsPlace } from './placeOptions';

/** A place that was refused is left by this much at first, mm, and by twice as much with each refusal of the same part. */
const FIRST_MM = 4;
/** After so many refusals a part leaves that place alone. */
const MOST_TIMES = 3;

/**
 * The problem without what the fit has refused: parts keep away from the stations where they were refused, spots take less
 * than the ballast that was. Null where there is nothing to take away.
 */
export function withoutRefused(
  aircraft: Aircraft,
  problem: PlaceProblem,
  arrangement: Arrangement,
  refusals: readonly Refusal[],
  timesBefore: ReadonlyMap<string, number>,
): { readonly problem: PlaceProblem; readonly cutIds: readonly string[] } | null {
  const about = new Set(refusals.flatMap(({ ids }) => ids));
  const moved = arrangement.placed.filter((place) => place.moved);
  const named = moved.filter(({ id }) => about.has(id));
  // Ballast is a part of its own only once it is aboard: what is refused and no part before is ballast.
  const isNew = [...about].some(
    (id) => !itemById(aircraft, id) && !aircraft.structure.some((piece) => id.startsWith(piece.id)),
  );
  const cut = named.length > 0 ? named : isNew ? [] : moved;
  if (cut.length === 0 && arrangement.ballast.length === 0) return null;
  const parts = problem.parts.map((part): MovablePart => {
    const placed = cut.find(({ id }) => id === part.id);
    if (!placed) return part;
    const times = timesBefore.get(part.id) ?? 0;
    const noWayIn = refusals.some(({ what, ids }) => what === 'way in' && ids.includes(part.id));
    const options = part.options.flatMap((option) => {
      if (option.id !== placed.optionId) return [option];
      if (times >= MOST_TIMES) return [];
      return (noWayIn ? underHatches(aircraft, option, times) : [option]).flatMap((each) =>
        awayFrom(each, placed.centreMm[0], FIRST_MM * 2 ** times),
      );
    });
    return withPresent(aircraft, { ...part, options });
  });
  const spots = problem.spots.map((spot) => {
    const grams =
      cut.length === 0 ? (arrangement.ballast.find(({ spotId }) => spotId === spot.id)?.massG ?? 0) : 0;
    return grams > 0 ? { ...spot, mostG: Math.max(0, Math.min(spot.mostG, grams / 2)) } : spot;
  });
  return { problem: { ...problem, parts, spots }, cutIds: cut.map(({ id }) => id) };
}

/** What of an option lies under a hatch or no farther from one than the part is long; at the second time only under one. */
function underHatches({ hatches = [] }: Aircraft, option: PlaceOption, times: number): PlaceOption[] {
  const beyondMm = times === 0 ? option.sizeMm[0] : 0;
  return hatches.flatMap(({ centreMm, lengthMm }, k): PlaceOption[] => {
    const from = Math.max(option.region.minMm[0], centreMm[0] - lengthMm / 2 - beyondMm);
    const to = Math.min(option.region.maxMm[0], centreMm[0] + lengthMm / 2 + beyondMm);
    const { minMm, maxMm } = option.region;
    const region = {
      minMm: [from, minMm[1], minMm[2]] as const,
      maxMm: [to, maxMm[1], maxMm[2]] as const,
    };
    const part = { ...option, id: `${option.id} hatch ${k + 1}`, region };
    return fitsRegion(part) ? [part] : [];
  });
}

/** What of an option lies so far ahead of a station and so far behind it. */
function awayFrom(option: PlaceOption, stationMm: number, awayMm: number): PlaceOption[] {
  const { lowMm, highMm } = centreRange(option, 0);
  const half = option.sizeMm[0] / 2;
  const { minMm, maxMm } = option.region;
  const pieces = [
    { suffix: 'ahead', from: lowMm, to: Math.min(highMm, stationMm - awayMm) },
    { suffix: 'behind', from: Math.max(lowMm, stationMm + awayMm), to: highMm },
  ];
  return pieces.flatMap(({ suffix, from, to }) => {
    if (to < from) return [];
    const region = {
      minMm: [from - half, minMm[1], minMm[2]] as const,
      maxMm: [to + half, maxMm[1], maxMm[2]] as const,
    };
    const piece = { ...option, id: `${option.id} ${suffix}`, region };
    return fitsRegion(piece) ? [piece] : [];
  });
}

/** A part whose present place has been cut off from its options may still stay there. */
function withPresent(aircraft: Aircraft, part: MovablePart): MovablePart {
  const { centreMm, optionId } = part.present;
  if (part.options.some(({ id }) => id === optionId)) return part;
  const holds = optionAt(part.options, centreMm);
  if (holds) return { ...part, present: { centreMm, optionId: holds.id } };
  const item = itemById(aircraft, part.id);
  if (!item) return part;
  const here = itsPlace(aircraft, item);
  return { ...part, options: [here, ...part.options], present: { centreMm, optionId: here.id } };
}
