import { hullHolds } from '../../engine/fit/hull';
import { wallPath } from '../../engine/fit/wallPath';
import { pointToAircraft } from '../../engine/geometry/rotation';
import type { Vec3 } from '../../engine/geometry/types';
import { distance, lerp } from '../../engine/geometry/vec3';
import { massPoint, massSum } from '../../engine/mass/massProperties';
import type { MassProperties } from '../../engine/mass/types';
import { itemById } from '../document/edit';
import type { Aircraft, Lead } from '../document/types';
import { poseOf } from './poses';
import { hulls, type NamedHull } from './solids';

/** A lead as it runs. */
export interface LeadState {
  readonly id: string;
  readonly name: string;
  /** End to end, aircraft frame, mm. */
  readonly pathMm: readonly Vec3[];
  readonly neededMm: number;
  /** The length owned, mm; null when it is made to measure. */
  readonly ownedMm: number | null;
  /** Owned less needed; negative when it is too short; 0 when it is made to measure. */
  readonly slackMm: number;
  /** Of the length owned, or of what is needed when it is made to measure, g. */
  readonly massG: number;
  /** Why it runs straight though it should run by the wall; null when it runs as it should. */
  readonly strays: string | null;
  readonly sentence: string;
}

/** How a lead runs and whether it reaches; null when an end is not aboard. */
export function leadState(aircraft: Aircraft, lead: Lead): LeadState | null {
  const way = leadWay(aircraft, lead);
  if (!way) return null;
  const { pathMm, strays } = way;
  const neededMm = pathLength(pathMm);
  const slackMm = lead.lengthMm === undefined ? 0 : lead.lengthMm - neededMm;
  const massG = (lead.massGPerM * (lead.lengthMm ?? neededMm)) / 1000;
  const reach =
    slackMm < 0
      ? `${lead.name} is ${(-slackMm).toFixed(0)} mm short.`
      : lead.lengthMm === undefined
        ? `${lead.name} needs ${neededMm.toFixed(0)} mm.`
        : `${lead.name} has ${slackMm.toFixed(0)} mm to spare.`;
  return {
    id: lead.id,
    name: lead.name,
    pathMm,
    neededMm,
    ownedMm: lead.lengthMm ?? null,
    slackMm,
    massG,
    strays,
    sentence: strays ? `${reach} ${strays}` : reach,
  };
}

/** Every lead whose ends are aboard. */
export const leadStates = (aircraft: Aircraft): LeadState[] =>
  (aircraft.leads ?? []).flatMap((lead) => leadState(aircraft, lead) ?? []);

type Way = Pick<LeadState, 'pathMm' | 'strays'>;

function leadWay(aircraft: Aircraft, lead: Lead): Way | null {
  const [from, to] = [itemById(aircraft, lead.from), itemById(aircraft, lead.to)];
  if (!from || !to) return null;
  const start = pointToAircraft(poseOf(from), lead.fromAtMm ?? [0, 0, 0]);
  const end = pointToAircraft(poseOf(to), lead.toAtMm ?? [0, 0, 0]);
  const straight = [start, ...lead.waypointsMm, end];
  if (lead.route !== 'wall') return { pathMm: straight, strays: null };
  const wall = byTheWall(aircraft, start, end);
  if (typeof wall === 'string') return { pathMm: straight, strays: `It runs straight: ${wall}.` };
  if (lead.waypointsMm.length === 0) return { pathMm: wall, strays: null };
  return { pathMm: [start, wall[1]!, ...lead.waypointsMm, wall.at(-2)!, end], strays: null };
}

/** The way along the wall of the hull that holds both ends, the shortest where several do; or why there is none. */
function byTheWall(aircraft: Aircraft, start: Vec3, end: Vec3): readonly Vec3[] | string {
  const [atStart, atEnd] = [start, end].map((point) =>
    hulls(aircraft).filter((hull) => hullHolds(hull, point)),
  ) as [NamedHull[], NamedHull[]];
  if (atStart.length === 0 || atEnd.length === 0) return 'an end lies outside every hull';
  const both = atStart.filter((hull) => atEnd.includes(hull));
  if (both.length === 0) return 'its ends lie in different hulls';
  const ways = both.flatMap((hull) => {
    const way = wallPath(hull, start, end);
    return way ? [way] : [];
  });
  if (ways.length === 0) return 'the hull has no wall to follow there';
  return ways.reduce((best, way) => (pathLength(way) < pathLength(best) ? way : best));
}

const pathLength = (pathMm: readonly Vec3[]): number =>
  pathMm.slice(1).reduce((sum, point, i) => sum + distance(pathMm[i]!, point), 0);

/** The mass of a lead: thin straight rods along its way, its slack spread evenly over them. */
export function leadMass({ pathMm, neededMm, massG }: LeadState): MassProperties {
  if (neededMm === 0) return massPoint(massG, pathMm[0]!);
  // Half a rod's mass at 1/2 ± 1/√12 of its length has the rod's own first and second moments (Gauss, two points).
  const points = [0.5 - Math.sqrt(1 / 12), 0.5 + Math.sqrt(1 / 12)];
  return massSum(
    pathMm.slice(1).flatMap((to, i) => {
      const from = pathMm[i]!;
      const half = (massG * distance(from, to)) / neededMm / 2;
      return points.map((t) => massPoint(half, lerp(from, to, t)));
    }),
  );
}
