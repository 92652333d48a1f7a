import { massAdd, massMirror, massPlace, massRemove, noMass } from '../../engine/mass/massProperties';
import { shellOfMass } from '../../engine/mass/surfaceProperties';
import type { MassProperties } from '../../engine/mass/types';
import { solidOfMass } from '../../engine/mass/volumeProperties';
import { lastPerObject, perObject, perObjects } from '../../engine/memory/memory';
import { type Item, itemById } from '../document/edit';
import type { Aircraft, BareAirframe, Lead, Part, TankItem } from '../document/types';
import {
  type AirframeDifference,
  airframeCorrection,
  airframeDifference,
  BARE_AIRFRAME_ID,
} from './bareAirframe';
import { leadMass, leadState } from './leads';
import { poseOf } from './poses';
import { type Body, cutStructureMass, structureBodies, withCutOuts } from './structureBodies';

export {
  type Body,
  type BodyRole,
  cutElementBodies,
  elementBodies,
  structureBodies,
  structureMass,
} from './structureBodies';

/**
 * Everything aboard that has a mass, liquid apart: the structure (or the bare airframe as weighed, where
 * the file says so), the empty tanks, the parts. What did not change in the document comes back as the
 * very same objects. Cut-outs are taken out of the blocks they are in, leads are bodies of their own; an airframe
 * that was weighed had its pockets cut already. `asWeighed` is the aircraft as its bare airframe stood on the scales, where
 * the one given is in another load state.
 */
export function bodies(aircraft: Aircraft, asWeighed: Aircraft = aircraft): readonly Body[] {
  return [
    ...withCutOuts(airframeBodies(aircraft, asWeighed), asWeighed),
    ...aircraft.tanks.map(tankBody),
    ...aircraft.parts.map(partBody),
    ...(aircraft.leads ?? []).flatMap((lead) => leadBody(aircraft, lead) ?? []),
  ];
}

/** A lead as thin rods along its way; null when an end is not aboard. The same body while its ends and its wall stand still. */
export function leadBody(aircraft: Aircraft, lead: Lead): Body | null {
  const [from, to] = [itemById(aircraft, lead.from), itemById(aircraft, lead.to)];
  return runningLead(lead, { aircraft, from, to, wall: lead.route === 'wall' ? aircraft.structure : null });
}

interface LeadSetting {
  readonly aircraft: Aircraft;
  readonly from: Item | undefined;
  readonly to: Item | undefined;
  /** That it runs along, or null. */
  readonly wall: Aircraft['structure'] | null;
}

const runningLead = lastPerObject(
  (lead: Lead, { aircraft }: LeadSetting): Body | null => {
    const state = leadState(aircraft, lead);
    const { id, name } = lead;
    return (
      state && {
        id,
        sourceId: id,
        name,
        group: 'lead',
        role: 'other',
        side: 'centre',
        mass: leadMass(state),
      }
    );
  },
  ([before], [now]) => before.from === now.from && before.to === now.to && before.wall === now.wall,
);

/** By how much the bare airframe as weighed differs from the sum of the shapes with their pockets; null when it was not weighed. */
export function bareAirframeDifference(aircraft: Aircraft): AirframeDifference | null {
  const { structure, bareAirframe } = aircraft;
  return bareAirframe && airframeDifference(cutStructureMass(structure, aircraft), bareAirframe);
}

/** A part's mass in its own frame: a uniform solid of its shape, with the inertia that was typed in, if any. */
function ownMass({ shape, massG, inertiaGmm2 }: Part): MassProperties {
  const solid = solidOfMass(shape, massG);
  return inertiaGmm2 && solid.cgMm ? { ...solid, inertiaAboutCgGmm2: inertiaGmm2 } : solid;
}

/** A part with its mass where it stands. */
export const partBody = perObject(
  (part: Part): Body => ({
    id: part.id,
    sourceId: part.id,
    name: part.name,
    group: 'part',
    role: part.role,
    side: 'centre',
    mass: massPlace(ownMass(part), poseOf(part)),
  }),
);

/** An empty tank: its mass is a thin shell around the inside. */
export const tankBody = perObject((tank: TankItem): Body => {
  const shell = shellOfMass(tank.shape, tank.emptyMassG);
  return {
    id: tank.id,
    sourceId: tank.id,
    name: tank.name,
    group: 'tank',
    role: 'fuel',
    side: 'centre',
    mass: massPlace(tank.mirrored ? massMirror(shell) : shell, poseOf(tank)),
  };
});

function airframeBodies({ structure }: Aircraft, asWeighed: Aircraft): readonly Body[] {
  const weighed = weighedAirframe(asWeighed);
  if (!weighed) return structureBodies(structure);
  if (weighed.by === 'adding') return [...structureBodies(structure), weighed.body];
  if (structure === asWeighed.structure) return [weighed.body];
  return [{ ...weighed.body, mass: withChanges(weighed.body.mass, asWeighed, structure) }];
}

/**
 * The weighed airframe once some elements were taken off it and others put on: swung legs, a canopy. A block goes as it
 * stood on the scales, with its pockets.
 */
function withChanges(
  weighed: MassProperties,
  asWeighed: Aircraft,
  after: Aircraft['structure'],
): MassProperties {
  const before = asWeighed.structure;
  const apart = (from: Aircraft['structure'], other: Aircraft['structure']) => {
    const kept = new Set(other);
    return cutStructureMass(
      from.filter((element) => !kept.has(element)),
      asWeighed,
    );
  };
  const gone = apart(before, after);
  const left = gone.massG < weighed.massG ? massRemove(weighed, gone) : noMass;
  return massAdd(left, apart(after, before));
}

/** How the weighed airframe enters the sum: one body, beside the shapes or in their place. */
export interface WeighedAirframe {
  readonly by: 'adding' | 'replacing';
  readonly body: Body;
}

/** Null when the airframe was not weighed, or is only compared. The same object again while nothing changed. */
export function weighedAirframe(aircraft: Aircraft): WeighedAirframe | null {
  const { structure, bareAirframe } = aircraft;
  return bareAirframe && weighedAs(structure, bareAirframe, cutStructureMass(structure, aircraft));
}

const weighedAs = perObjects(
  (
    structure: Aircraft['structure'],
    bareAirframe: BareAirframe,
    shapes: MassProperties,
  ): WeighedAirframe | null => {
    const correction = airframeCorrection(structure, shapes, bareAirframe);
    if (!correction) return null;
    const body: Body = {
      id: BARE_AIRFRAME_ID,
      sourceId: BARE_AIRFRAME_ID,
      name: correction.by === 'adding' ? 'Bare airframe, correction' : 'Bare airframe, as weighed',
      group: 'structure',
      role: 'airframe',
      side: 'centre',
      mass: correction.mass,
    };
    return { by: correction.by, body };
  },
);
