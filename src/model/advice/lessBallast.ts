import { ballastRange } from '../../engine/balance/ballast';
import { partBody } from '../airframe/bodies';
import { removeItem } from '../document/edit';
import { shownText } from '../document/names';
import type { Part } from '../document/types';
import { massStepG, massWords, stepped } from './figures';
import type { Goal } from './goal';
import type { Remedy, RemedyEdit } from './remedy';
import { remedyIf, statesOf, type Workshop } from './trial';

/** Ballast aboard that may be taken out. */
export const ballastAboard = ({ aircraft }: Workshop): readonly Part[] =>
  aircraft.parts.filter(({ role, locked, massG }) => role === 'ballast' && !locked && massG > 0);

/** Less of one ballast that is aboard, as little as does it short of the dangerous limit; null when none does. */
export function lessBallast(shop: Workshop, goal: Goal): Remedy | null {
  const found = ballastAboard(shop).flatMap((part) => lessOf(shop, goal, part) ?? []);
  return found.sort((a, b) => a.result.shown!.full.massG - b.result.shown!.full.massG)[0] ?? null;
}

function lessOf(shop: Workshop, goal: Goal, part: Part): Remedy | null {
  for (const massG of massesToTry(shop, goal, part)) {
    if (shop.tries.left <= 0) return null;
    shop.tries.left -= 1;
    const was = massWords(part.massG, shop.spoken);
    const edits: readonly RemedyEdit[] =
      massG === 0 ? [{ do: 'remove', id: part.id }] : [{ do: 'weigh', id: part.id, massG }];
    const words =
      massG === 0
        ? `Take out “${shownText(part.name)}”, ${was}`
        : `Reduce “${shownText(part.name)}” from ${was} to ${massWords(massG, shop.spoken)}`;
    const remedy = remedyIf(shop, goal, { kind: 'reduce-ballast', edits, words });
    if (remedy) return remedy;
  }
  return null;
}

/** Whole steps of mass that would do by the linear bounds: with the reserve first, then without. */
function massesToTry(shop: Workshop, goal: Goal, part: Part): readonly number[] {
  const at = partBody(part).mass.cgMm;
  if (!at) return [];
  const states = statesOf(removeItem(shop.aircraft, part.id), shop.given).states;
  const step = massStepG(shop.spoken);
  const masses = [goal.reserved, goal].flatMap(({ lowMm, highMm }) => {
    let [leastG, mostG] = [0, part.massG];
    for (const { balance } of states) {
      const travel = balance.travel.map((point) => ({ ...point, cgMm: turned(point.cgMm, goal.axis) }));
      const range = ballastRange(travel, { forwardMm: lowMm, aftMm: highMm }, at[goal.axis]);
      if (!range) return [];
      leastG = Math.max(leastG, range.leastG);
      mostG = Math.min(mostG, range.mostG);
    }
    const [first, last] = [Math.ceil(leastG / step - 1e-9), Math.floor(mostG / step + 1e-9)];
    return first <= last ? [first, Math.round((first + last) / 2), last] : [];
  });
  return [...new Set(masses)].map((count) => stepped(count, step)).filter((massG) => massG < part.massG);
}

/** The CG with the axis of interest first, as the ballast formula reads it. */
const turned = ([x, y, z]: readonly [number, number, number], axis: 0 | 1): [number, number, number] =>
  axis === 0 ? [x, y, z] : [y, x, z];
