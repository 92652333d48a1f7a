import { ballastRange } from '../../engine/balance/ballast';
import { stepsDown, stepsUp } from '../../engine/geometry/wholeSteps';
import { partBody } from '../airframe/bodies';
import { shownText } from '../document/names';
import type { Part } from '../document/types';
import { massStepG, massWords, stepped } from './figures';
import type { Goal } from './goal';
import { helpfulWay } from './helpfulWay';
import { applyRemedy, type Remedy, type RemedyEdit } from './remedy';
import { remedyIf, statesOf, type Workshop } from './trial';

/** Ballast aboard that may be taken out or made lighter by itself. */
const ballastAboard = ({ aircraft }: Workshop): readonly Part[] =>
  aircraft.parts.filter(
    ({ role, locked, massG, twinId }) => role === 'ballast' && !locked && massG > 0 && twinId === undefined,
  );

/**
 * Less of the ballast that is aboard, short of the dangerous limit: of one piece alone, or where that is not enough with
 * others taken out, the farthest out first, as few as do it. Null when none does.
 */
export function lessBallast(shop: Workshop, goal: Goal): Remedy | null {
  const aboard = ballastAboard(shop);
  const wrong = ballastAtWrongEnd(shop, goal);
  for (let count = 0; count < Math.max(1, wrong.length); count += 1) {
    const removed = wrong.slice(0, count);
    const rest = (count === 0 ? aboard : wrong).filter((part) => !removed.includes(part));
    const found = rest.flatMap((part) => lessOf(shop, goal, part, removed) ?? []);
    const [lightest] = found.sort((a, b) => a.result.shown!.full.massG - b.result.shown!.full.massG);
    if (lightest) return lightest;
  }
  return null;
}

/** Loose ballast that pulls the way that is wrong, the farthest out first. */
export function ballastAtWrongEnd(shop: Workshop, goal: Goal): readonly Part[] {
  const way = helpfulWay(shop, goal);
  const { axis } = goal;
  const { aftmost, mostLateral } = shop.before;
  const middleMm = (axis === 0 ? aftmost : mostLateral)?.cgMm[axis] ?? 0;
  const outMm = ({ positionMm }: Part) => (middleMm - positionMm[axis]) * way;
  return ballastAboard(shop)
    .filter((part) => outMm(part) > 0)
    .sort((a, b) => outMm(b) - outMm(a));
}

/** Less of one piece with others taken out. */
function lessOf(shop: Workshop, goal: Goal, part: Part, removed: readonly Part[]): Remedy | null {
  const removals = removed.map(({ id }): RemedyEdit => ({ do: 'remove', id }));
  for (const massG of massesToTry(shop, goal, part, removals)) {
    if (shop.tries.left <= 0) return null;
    shop.tries.left -= 1;
    const edit: RemedyEdit =
      massG === 0 ? { do: 'remove', id: part.id } : { do: 'weigh', id: part.id, massG };
    const words = lessWords(shop, part, massG, removed);
    const remedy = remedyIf(shop, goal, { kind: 'reduce-ballast', edits: [...removals, edit], words });
    if (remedy) return remedy;
  }
  return null;
}

function lessWords({ spoken }: Workshop, part: Part, massG: number, removed: readonly Part[]): string {
  const [name, was] = [`“${shownText(part.name)}”`, massWords(part.massG, spoken)];
  const out = removed.map((weight) => `“${shownText(weight.name)}”`);
  if (massG === 0)
    return out.length > 0 ? `Take out ${[...out, name].join(' and ')}` : `Take out ${name}, ${was}`;
  const less = `educe ${name} from ${was} to ${massWords(massG, spoken)}`;
  return out.length > 0 ? `Take out ${out.join(' and ')} and r${less}` : `R${less}`;
}

/** Whole steps of mass that would do by the linear bounds: with the reserve first, then without. */
function massesToTry(
  shop: Workshop,
  goal: Goal,
  part: Part,
  removals: readonly RemedyEdit[],
): readonly number[] {
  const at = partBody(part).mass.cgMm;
  if (!at) return [];
  const without = applyRemedy(shop.aircraft, { edits: [...removals, { do: 'remove', id: part.id }] });
  const { states } = statesOf(without, shop.given);
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
    const [first, last] = [stepsUp(leastG / step), stepsDown(mostG / step)];
    return first <= last ? [first, Math.round((first + last) / 2), last] : [];
  });
  return [...new Set(masses)].map((count) => stepped(count, step)).filter((massG) => massG < part.massG);
}

/** The CG with the axis of interest first, as the ballast formula reads it. */
const turned = ([x, y, z]: readonly [number, number, number], axis: 0 | 1): [number, number, number] =>
  axis === 0 ? [x, y, z] : [y, x, z];
