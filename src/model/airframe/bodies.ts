import {
  massAdd,
  massMirror,
  massPlace,
  massRemove,
  massSum,
  noMass,
} from '../../engine/mass/massProperties';
import { shellMass, shellOfMass, surfaceProperties } from '../../engine/mass/surfaceProperties';
import type { MassProperties } from '../../engine/mass/types';
import { solidMass, solidOfMass, volumeProperties } from '../../engine/mass/volumeProperties';
import { lastPerObject, perObject, perObjects } from '../../engine/memory/memory';
import { type Item, itemById } from '../document/edit';
import type {
  Aircraft,
  BareAirframe,
  Lead,
  MassSource,
  Part,
  Role,
  StructurePiece,
  TankItem,
} from '../document/types';
import {
  type AirframeDifference,
  airframeCorrection,
  airframeDifference,
  BARE_AIRFRAME_ID,
} from './bareAirframe';
import { type CutOut, cutOuts } from './cutOuts';
import { leadMass, leadState } from './leads';
import { elementPieces, type Piece, type Side } from './pieces';
import { poseOf } from './poses';

/** What a body is for: a part's role, or the airframe, or what holds the fuel. */
export type BodyRole = Role | 'airframe' | 'fuel';

/** One thing with mass aboard, liquid apart. */
export interface Body {
  /** Unique in the aircraft; of a structure element, its piece's id. */
  readonly id: string;
  /** The structure element, tank or part in the file, or `bare-airframe`. */
  readonly sourceId: string;
  readonly name: string;
  readonly group: 'structure' | 'part' | 'tank' | 'lead';
  readonly role: BodyRole;
  readonly side: Side;
  /** Aircraft frame. */
  readonly mass: MassProperties;
}

/**
 * Everything aboard that has a mass, liquid apart: the structure (or the bare airframe as weighed, where
 * the file says so), the empty tanks, the parts. What did not change in the document comes back as the
 * very same objects. Cut-outs are taken out of the blocks they are in, leads are bodies of their own. `asWeighed` is the aircraft as its bare airframe stood on the scales, where the one
 * given is in another load state.
 */
export function bodies(aircraft: Aircraft, asWeighed: Aircraft = aircraft): readonly Body[] {
  return [
    ...withCutOuts(airframeBodies(aircraft, asWeighed), asWeighed),
    ...aircraft.tanks.map(tankBody),
    ...aircraft.parts.map(partBody),
    ...(aircraft.leads ?? []).flatMap((lead) => leadBody(aircraft, lead) ?? []),
  ];
}

/** The structure less what its cut-outs take out of it. A weighed airframe is taken to have them already. */
function withCutOuts(structure: readonly Body[], aircraft: Aircraft): readonly Body[] {
  const cuts = cutOuts(aircraft);
  if (cuts.length === 0) return structure;
  return structure.map((body) => {
    const inBody = cuts.filter(({ pieceId }) => pieceId === body.id);
    return inBody.length === 0 ? body : cutBody(body, ...inBody);
  });
}

const cutBody = lastPerObject(
  (body: Body, ...cuts: readonly CutOut[]): Body => {
    const left = cuts.reduce(
      (rest, { massRemoved }) => (massRemoved.massG < rest.massG ? massRemove(rest, massRemoved) : noMass),
      body.mass,
    );
    return { ...body, mass: left };
  },
  (before, now) => before.length === now.length && before.every((cut, i) => sameCut(cut, now[i]!)),
);

/** The bodies of one element, less what is cut out of it; the same ones while nothing of that changes. */
export const cutElementBodies = (aircraft: Aircraft, element: StructurePiece): readonly Body[] =>
  element.kind === 'block' && element.cuttable
    ? withCutOuts(elementBodies(element), aircraft)
    : elementBodies(element);

const sameCut = (a: CutOut, b: CutOut): boolean =>
  a.removed === b.removed && a.massRemovedG === b.massRemovedG;

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

/** The structure as the shapes give it, whatever the scales say. */
export const structureBodies = perObject((structure: Aircraft['structure']): readonly Body[] =>
  structure.flatMap((element) => elementBodies(element)),
);

/** The sum of the shapes: the airframe as the dimensions give it. */
export const structureMass = perObject(
  (structure: Aircraft['structure']): MassProperties =>
    massSum(structureBodies(structure).map(({ mass }) => mass)),
);

/** By how much the bare airframe as weighed differs from the sum of the shapes; null when it was not weighed. */
export function bareAirframeDifference({ structure, bareAirframe }: Aircraft): AirframeDifference | null {
  return bareAirframe && airframeDifference(structureMass(structure), bareAirframe);
}

/** The bodies of one structure element, one for each of its pieces. */
export const elementBodies = perObject((element: StructurePiece): readonly Body[] => {
  const masses = elementMasses(element, elementPieces(element));
  return elementPieces(element).map((piece, index) => ({
    id: piece.id,
    sourceId: element.id,
    name: element.name,
    group: 'structure',
    role: element.kind === 'leg' ? 'undercarriage' : 'airframe',
    side: piece.side,
    mass: posed(masses[index] ?? noMass, piece),
  }));
});

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
  return [{ ...weighed.body, mass: withChanges(weighed.body.mass, asWeighed.structure, structure) }];
}

/** The weighed airframe once some elements were taken off it and others put on: swung legs, a canopy. */
function withChanges(
  weighed: MassProperties,
  before: Aircraft['structure'],
  after: Aircraft['structure'],
): MassProperties {
  const apart = (from: Aircraft['structure'], other: Aircraft['structure']) => {
    const kept = new Set(other);
    return structureMass(from.filter((element) => !kept.has(element)));
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
export const weighedAirframe = ({ structure, bareAirframe }: Aircraft): WeighedAirframe | null =>
  bareAirframe ? weighedAs(structure, bareAirframe) : null;

const weighedAs = perObjects(
  (structure: Aircraft['structure'], bareAirframe: BareAirframe): WeighedAirframe | null => {
    const correction = airframeCorrection(structure, structureMass(structure), bareAirframe);
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

/** Mass properties of each piece in its own frame, before it is posed and mirrored. */
function elementMasses(element: StructurePiece, pieces: readonly Piece[]): readonly MassProperties[] {
  if (element.kind === 'leg') {
    return pieces.map((piece) =>
      solidOfMass(piece.shape, piece.kind === 'wheel' ? element.wheelMassG : element.strutMassG),
    );
  }
  const { mass } = element;
  if (mass.by === 'skin') return pieces.map(({ shape }) => shellMass(shape, mass.gPerM2));
  if (mass.by === 'foam') return pieces.map(({ shape }) => solidMass(shape, mass.gPerMl));
  const hollow = element.kind === 'fuselage' || element.kind === 'boom';
  const spread = mass.spread ?? (hollow ? 'skin' : 'solid');
  return pieces.map((piece) => {
    const side = pieces.filter((other) => other.side === piece.side);
    const massG = weighedG(mass, piece.side) * shareOf(piece, side, spread);
    return spread === 'skin' ? shellOfMass(piece.shape, massG) : solidOfMass(piece.shape, massG);
  });
}

function weighedG(mass: Extract<MassSource, { by: 'weighed' }>, side: Side): number {
  return side === 'left' ? (mass.leftMassG ?? mass.massG) : mass.massG;
}

/** A piece's share of its side's weighed mass: by skin area or by volume. */
function shareOf(piece: Piece, side: readonly Piece[], spread: 'solid' | 'skin'): number {
  const size = ({ shape }: Piece) =>
    spread === 'skin' ? surfaceProperties(shape).areaMm2 : volumeProperties(shape).volumeMm3;
  const total = side.reduce((sum, other) => sum + size(other), 0);
  return total > 0 ? size(piece) / total : 0;
}

function posed(mass: MassProperties, piece: Piece): MassProperties {
  const placed = massPlace(mass, piece.pose);
  return piece.mirrored ? massMirror(placed) : placed;
}
