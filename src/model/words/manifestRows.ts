import type { Vec3 } from '../../engine/geometry/types';
import { massSum } from '../../engine/mass/massProperties';
import { lastPerObject, perObject } from '../../engine/memory/memory';
import {
  type Body,
  type BodyRole,
  cutElementBodies,
  leadBody,
  partBody,
  tankBody,
  weighedAirframe,
} from '../airframe/bodies';
import type { Aircraft, MassFrom } from '../document/types';

/** One line of the manifest: an element with both its sides, a tank without its liquid, a part, or a lead. */
export interface ManifestRow {
  /** The item's id in the file, or `bare-airframe`. */
  readonly id: string;
  readonly name: string;
  readonly group: Body['group'];
  readonly role: BodyRole;
  readonly massG: number;
  /** Aircraft frame; null without mass. */
  readonly cgMm: Vec3 | null;
  readonly locked: boolean;
  /** Where the mass comes from; null where nobody said. */
  readonly massFrom: MassFrom | null;
  /** False for a structure element whose shape is not in the sum, as the weighed airframe stands for it. */
  readonly counted: boolean;
}

type Item = Aircraft['structure'][number] | Aircraft['tanks'][number] | Aircraft['parts'][number];

/**
 * All that is aboard, liquid apart, in the file's order: structure, the bare airframe as weighed, tanks,
 * parts, leads. An unchanged item keeps its very row.
 */
export function manifestRows(aircraft: Aircraft): readonly ManifestRow[] {
  const { structure, tanks, parts } = aircraft;
  const weighed = weighedAirframe(aircraft);
  const counted = weighed?.by !== 'replacing';
  return [
    ...structure.map((element) => row(element, counted, ...cutElementBodies(aircraft, element))),
    ...(weighed ? [weighedRow(weighed.body)] : []),
    ...tanks.map((tank) => row(tank, true, tankBody(tank))),
    ...parts.map((part) => row(part, true, partBody(part))),
    ...(aircraft.leads ?? []).flatMap((lead) => leadRow(leadBody(aircraft, lead)) ?? []),
  ];
}

const row = lastPerObject((item: Item, counted: boolean, ...itsBodies: readonly Body[]): ManifestRow => {
  const [first] = itsBodies;
  if (!first) throw new Error(`"${item.name}" came without a body.`);
  const { massG, cgMm } = itsBodies.length === 1 ? first.mass : massSum(itsBodies.map(({ mass }) => mass));
  return {
    id: item.id,
    name: item.name,
    group: first.group,
    role: first.role,
    massG,
    cgMm,
    locked: 'locked' in item && item.locked === true,
    massFrom: item.massFrom ?? null,
    counted,
  };
});

/** A lead's mass and place come of its ends; null when one is not aboard. */
const leadRow = (body: Body | null): ManifestRow | null => body && leadBodyRow(body);

const leadBodyRow = perObject((body: Body): ManifestRow => ({ ...weighedRow(body), locked: false }));

function weighedRow({ sourceId, name, group, role, mass: { massG, cgMm } }: Body): ManifestRow {
  return { id: sourceId, name, group, role, massG, cgMm, locked: true, massFrom: null, counted: true };
}
