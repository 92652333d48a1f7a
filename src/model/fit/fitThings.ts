import type { Solid } from '../../engine/fit/solid';
import { lastPerObject, perObject } from '../../engine/memory/memory';
import { aboardIn, bothStates, type InStates, legsIn } from '../airframe/aboard';
import { raisedLeg } from '../airframe/retract';
import { itemSolid, standingOf } from '../airframe/solids';
import type { Item } from '../document/edit';
import type { Aircraft, Leg, StructurePiece } from '../document/types';
import type { FitParty } from './fitProblem';

/** Something that takes up room, where it stands in some of the load states. */
export interface FitThing extends FitParty {
  readonly what: 'part' | 'tank' | 'structure';
  readonly solid: Solid;
  readonly item: Item | null;
  /** The leg it belongs to, and whether it is the leg swung up or let down; null where it stands still. */
  readonly leg: Leg | null;
  readonly isWheel: boolean;
  readonly legsUp: boolean | null;
}

/** Parts, tanks and the structure that can be run into, legs both down and up. Unchanged items are the same objects. */
export const fitThings = ({ parts, tanks, structure }: Aircraft): FitThing[] => [
  ...parts.map((part) => itemThing('part', part)),
  ...tanks.map((tank) => itemThing('tank', tank)),
  ...structureThings(structure),
];

export const itemThing = (what: 'part' | 'tank', item: Item): FitThing => thingOf(item, what);

const thingOf = lastPerObject((item: Item, what: 'part' | 'tank'): FitThing => {
  const { id, name } = item;
  const still = { leg: null, isWheel: false, legsUp: null };
  return { id, name, what, pieceId: id, solid: itemSolid(item), item, ...still };
});

const elementThings = perObject((element: StructurePiece): readonly FitThing[] =>
  element.kind === 'leg' && element.retract
    ? [...piecesOf(element, false), ...piecesOf(raisedLeg(element), true)]
    : piecesOf(element, null),
);

const structureThings = perObject((structure: Aircraft['structure']): readonly FitThing[] =>
  structure.flatMap(elementThings),
);

const piecesOf = (element: StructurePiece, legsUp: boolean | null): FitThing[] =>
  standingOf(element).map(({ id, sourceId, name, solid }) => ({
    id: sourceId,
    name,
    what: 'structure',
    pieceId: id,
    solid,
    item: null,
    leg: element.kind === 'leg' ? element : null,
    isWheel: element.kind === 'leg' && id.endsWith('wheel'),
    legsUp,
  }));

/** The load states in which an item stands there. */
export function statesOf(
  aircraft: Aircraft,
  { id, legsUp }: Pick<FitThing, 'id' | 'legsUp'>,
): InStates | null {
  const aboard = aboardIn(aircraft, id);
  return legsUp === null ? aboard : bothStates(aboard, legsIn(aircraft, legsUp));
}
