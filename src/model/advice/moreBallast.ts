import { ballastRange } from '../../engine/balance/ballast';
import type { Vec3 } from '../../engine/geometry/types';
import { stepsUp } from '../../engine/geometry/wholeSteps';
import { sectionBetween } from '../../engine/mass/solids/loft';
import { hulls, type NamedHull } from '../airframe/solids';
import { shownText } from '../document/names';
import type { Aircraft, Part } from '../document/types';
import { lengthStepsMm, massStepG, massWords, type Spoken, stationWords, stepped } from './figures';
import type { Goal } from './goal';
import { helpfulWay } from './helpfulWay';
import { ballastAtWrongEnd } from './lessBallast';
import { applyRemedy, type Remedy, type RemedyEdit } from './remedy';
import { remedyIf, statesOf, type Workshop } from './trial';

/** Lead, g/ml: 11.34 (CRC Handbook of Chemistry and Physics, from memory), less a little air between the pieces. */
const LEAD_G_PER_ML = 10;
/** Places along the hull that are tried, from the end that helps, mm apart. */
const APART_MM = 10;
/** Not farther in than this share of the hull: ballast near the CG is only weight. */
const DEEPEST_SHARE = 0.4;
/** More lead than this share of the aircraft's mass is another aircraft. Common practice, no source. */
const MOST_SHARE = 0.15;
/** Lead is cast so many times as long as it is wide. */
const LONG_RATIOS = [1, 3, 6] as const;

/** A place for ballast. */
interface Spot {
  readonly positionMm: Vec3;
  readonly stepG: number;
  readonly mostG: number;
  /** The aircraft's own name for it. */
  readonly name: string | null;
}

/**
 * The least ballast at the place where least of it does it, last of all remedies. What lies aboard at the wrong end is
 * taken out first, so ballast is never added to outweigh ballast.
 */
export function moreBallast(shop: Workshop, goal: Goal): Remedy | null {
  const way = helpfulWay(shop, goal);
  const wrong = ballastAtWrongEnd(shop, goal);
  const removals = wrong.map(({ id }): RemedyEdit => ({ do: 'remove', id }));
  const aircraft = applyRemedy(shop.aircraft, { edits: removals });
  const states = removals.length > 0 ? statesOf(aircraft, shop.given).states : shop.states;
  const cleared: Workshop = { ...shop, states };
  for (const spot of spotsOf(aircraft, way, shop.spoken)) {
    const remedy = ballastAt(cleared, goal, spot, removals, wrong);
    if (remedy) return remedy;
    if (shop.tries.left <= 0) return null;
  }
  return null;
}

function ballastAt(
  shop: Workshop,
  goal: Goal,
  spot: Spot,
  removals: readonly RemedyEdit[],
  removed: readonly Part[],
): Remedy | null {
  for (const massG of massesAt(shop, goal, spot)) {
    for (const shape of leadShapes(massG)) {
      if (shop.tries.left <= 0) return null;
      shop.tries.left -= 1;
      const part = { ...LEAD, name: 'Ballast', shape, massG, positionMm: spot.positionMm };
      const edits: readonly RemedyEdit[] = [...removals, { do: 'add', part, into: 'hull' }];
      const where = spot.name
        ? `at “${shownText(spot.name)}”`
        : `at station ${stationWords(spot.positionMm[0], shop.spoken)}`;
      const out = removed.map(({ name }) => `“${shownText(name)}”`).join(' and ');
      const adding = `${massWords(massG, shop.spoken)} of ballast ${where}`;
      const words = out ? `Take out ${out} and add ${adding}` : `Add ${adding}`;
      const remedy = remedyIf(shop, goal, { kind: 'add-ballast', edits, words });
      if (remedy) return remedy;
    }
  }
  return null;
}

const LEAD = { role: 'ballast', yawDeg: 0, pitchDeg: 0, rollDeg: 0 } as const;

/** The least whole steps that do it at a spot, with the reserve and without; empty when none does. */
function massesAt({ states, spoken }: Workshop, goal: Goal, spot: Spot): readonly number[] {
  const step = Math.max(spot.stepG, massStepG(spoken));
  const masses = [goal.reserved, goal].flatMap(({ lowMm, highMm }) => {
    const heavyG = MOST_SHARE * Math.max(...states.map(({ balance }) => balance.massG));
    let [leastG, mostG] = [0, Math.min(spot.mostG, heavyG)];
    for (const { balance } of states) {
      const range = ballastRange(balance.travel, { forwardMm: lowMm, aftMm: highMm }, spot.positionMm[0]);
      if (!range) return [];
      leastG = Math.max(leastG, range.leastG);
      mostG = Math.min(mostG, range.mostG);
    }
    const massG = stepped(Math.max(1, stepsUp(leastG / step)), step);
    return massG <= mostG ? [massG] : [];
  });
  return [...new Set(masses)];
}

/** A piece of lead as a cube and as bars along the hull. */
const leadShapes = (massG: number): Part['shape'][] =>
  LONG_RATIOS.map((ratio) => {
    const sideMm = Math.cbrt((massG / LEAD_G_PER_ML / ratio) * 1000);
    return { kind: 'box', lengthMm: sideMm * ratio, widthMm: sideMm, heightMm: sideMm };
  });

/** The spots that the aircraft names, or else places along its main hull from the end that helps. */
function spotsOf(aircraft: Aircraft, way: 1 | -1, spoken: Spoken): readonly Spot[] {
  const named = aircraft.ballastSpots ?? [];
  if (named.length > 0) return [...named].sort((a, b) => way * (b.positionMm[0] - a.positionMm[0]));
  const main = hulls(aircraft).find(({ pose }) => pose.positionMm[1] === 0);
  if (!main) return [];
  const [noseMm, tailMm] = [main.shape.sections[0]?.xMm ?? 0, main.shape.sections.at(-1)?.xMm ?? 0];
  const lengthMm = tailMm - noseMm;
  const [stepMm] = lengthStepsMm(spoken);
  const end = main.pose.positionMm[0] + (way < 0 ? noseMm : tailMm);
  const spots: Spot[] = [];
  for (let inMm = APART_MM; inMm <= lengthMm * DEEPEST_SHARE; inMm += APART_MM) {
    // A station that reads as a whole figure.
    const steps = Math.round((end - way * inMm - spoken.fromMm) / stepMm);
    const stationMm = spoken.fromMm + stepped(steps, stepMm);
    for (const zMm of heightsAt(main, stationMm)) {
      spots.push({ positionMm: [stationMm, 0, zMm], stepG: 0, mostG: Number.POSITIVE_INFINITY, name: null });
    }
  }
  return spots;
}

/** In the middle of the hull there, and halfway down to its floor, mm. */
function heightsAt({ shape: { sections }, pose }: NamedHull, stationMm: number): readonly number[] {
  const x = stationMm - pose.positionMm[0];
  const next = sections.findIndex(({ xMm }) => xMm >= x);
  const [from, to] = [sections[next - 1], sections[next]];
  if (!from || !to || to.xMm <= from.xMm) return [];
  const { centreZMm, heightMm } = sectionBetween(from, to, (x - from.xMm) / (to.xMm - from.xMm));
  return [centreZMm, centreZMm - heightMm / 4].map((zMm) => pose.positionMm[2] + zMm);
}
