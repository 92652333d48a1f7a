import { pointToAircraft } from '../../engine/geometry/rotation';
import type { Vec3 } from '../../engine/geometry/types';
import { sub } from '../../engine/geometry/vec3';
import type { Lead as PlaceLead } from '../../engine/place/types';
import { leadBody } from '../airframe/bodies';
import { poseOf } from '../airframe/poses';
import { type Item, itemById } from '../document/edit';
import type { Aircraft, Lead } from '../document/types';
import type { AircraftCase } from './loadCases';

/** Where a lead leaves an item, aircraft frame, mm; its origin where the lead does not say. */
const endAt = (item: Item, atMm: Vec3 | undefined): Vec3 => pointToAircraft(poseOf(item), atMm ?? [0, 0, 0]);

/** From the middle of an item's box to where each of its leads leaves it as it stands, mm, by the lead's id. */
export function leadEndsOn({ leads = [] }: Aircraft, item: Item, centreMm: Vec3): Record<string, Vec3> {
  return Object.fromEntries(
    leads.flatMap(({ id, from, to, fromAtMm, toAtMm }) =>
      from === item.id || to === item.id
        ? [[id, sub(endAt(item, from === item.id ? fromAtMm : toAtMm), centreMm)] as const]
        : [],
    ),
  );
}

/** Kept in hand, so that no rounding of a place leaves a lead short, mm. */
const SPARE_MM = 0.01;

/** Leads that must reach and weigh, of which one end at least may move. One end of each is `from`, a part that moves. */
export function movingLeads(
  aircraft: Aircraft,
  moves: (id: string) => boolean,
  cases: readonly AircraftCase[],
  mustReach: boolean,
): PlaceLead[] {
  return (aircraft.leads ?? []).flatMap((lead) => {
    const { id, name, from, to, fromAtMm, toAtMm, lengthMm, massGPerM } = lead;
    const [a, b] = [itemById(aircraft, from), itemById(aircraft, to)];
    if (!a || !b || from === to || !(moves(from) || moves(to))) return [];
    const [start, end] = moves(from) ? [from, moves(to) ? to : endAt(b, toAtMm)] : [to, endAt(a, fromAtMm)];
    const way = waypointsOf(lead);
    const waypointsMm = moves(from) ? way : [...way].reverse();
    const stated =
      lengthMm === undefined
        ? { massG: 0, gPerMm: massGPerM / 1000 }
        : { massG: (massGPerM * lengthMm) / 1000, gPerMm: 0 };
    return [
      {
        id,
        name,
        from: start,
        to: end,
        by: 'straight' as const,
        lengthMm: mustReach && lengthMm !== undefined ? lengthMm - SPARE_MM : Number.POSITIVE_INFINITY,
        waypointsMm,
        mass: { ...stated, aboard: cases.map((load) => load.massOf(id) > 0) },
      },
    ];
  });
}

/**
 * A lead by the wall is taken as straight, which is never longer than it is: what it really needs and where it really hangs
 * is judged before anything is offered.
 */
const waypointsOf = ({ route, waypointsMm }: Lead): readonly Vec3[] => (route === 'wall' ? [] : waypointsMm);

/** What a lead adds to a case as it hangs now: to be taken out of it, g and g·mm. */
export function leadPull(aircraft: Aircraft, leadId: string): { massG: number; momentGmm: Vec3 } {
  const lead = aircraft.leads?.find(({ id }) => id === leadId);
  const body = lead && leadBody(aircraft, lead);
  const massG = body?.mass.massG ?? 0;
  const cg = body?.mass.cgMm ?? [0, 0, 0];
  return { massG, momentGmm: [massG * cg[0], massG * cg[1], massG * cg[2]] };
}
