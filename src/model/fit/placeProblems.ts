import { touchMm } from '../../engine/fit/shapeDistance';
import { boxGap } from '../../engine/fit/solid';
import { bothStates, type InStates } from '../airframe/aboard';
import { type SurfaceSolid, surfaceSolids } from '../airframe/surfaceSolids';
import type { Aircraft } from '../document/types';
import { bayFault } from './bays';
import { type FitKind, type FitParty, type FitProblem, partiesKey } from './fitProblem';
import { type FitThing, itemThing, statesOf } from './fitThings';
import { outOfAll } from './outOfAll';
import { solidOverlap } from './overlaps';
import { partyOf } from './pairProblems';
import { type PlaceFit, placeFit } from './placeFit';

/** What is wrong with where each part and tank stands: in its hull or flying surface, and in its bay. */
export const placeProblems = (aircraft: Aircraft): FitProblem[] => [
  ...aircraft.parts.flatMap((part) => itemPlaceProblems(aircraft, itemThing('part', part))),
  ...aircraft.tanks.flatMap((tank) => itemPlaceProblems(aircraft, itemThing('tank', tank))),
];

/** The same of one of them. */
export function itemPlaceProblems(aircraft: Aircraft, thing: FitThing): FitProblem[] {
  const place = placeFit(aircraft.structure, thing.solid);
  return [
    ...(place ? holderProblem(aircraft, thing, place) : []),
    ...surfaceClashes(aircraft, thing, place),
    ...bayProblem(aircraft, thing),
  ];
}

const inTheOpen = ({ item }: FitThing): boolean => item?.inTheOpen === true;

function holderProblem(aircraft: Aircraft, thing: FitThing, place: PlaceFit): FitProblem[] {
  const { where, holder, outMm, atMm } = place;
  if (inTheOpen(thing) || outMm <= touchMm) return [];
  const what = 'panels' in holder ? 'surface' : 'hull';
  const id = 'panels' in holder ? holder.sourceId : sourceOf(holder.id);
  const kind: FitKind = where === 'outside' ? 'outside' : 'through';
  const states = together(aircraft, thing, id);
  if (!states) return [];
  const party: FitParty = { id, name: holder.name, what, pieceId: holder.id };
  return [
    {
      // The holder may change on the way out; it is the same trouble.
      key: partiesKey('outside', [thing.id]),
      kind,
      severity: kind === 'outside' ? 'caution' : 'bad',
      parties: [partyOf(thing), party],
      byMm: outMm,
      states,
      atMm,
      clearByMm: null,
      rule: null,
    },
  ];
}

const sourceOf = (pieceId: string): string => pieceId.split('.')[0] ?? pieceId;

function together(aircraft: Aircraft, thing: FitThing, otherId: string): InStates | null {
  const [itsStates, otherStates] = [
    statesOf(aircraft, thing),
    statesOf(aircraft, { id: otherId, legsUp: null }),
  ];
  return itsStates && otherStates && bothStates(itsStates, otherStates);
}

/** Flying surfaces that it runs into: all but the one it is mounted in, and those cut away where it stands in a hull. */
const surfaceClashes = (aircraft: Aircraft, thing: FitThing, place: PlaceFit | null): FitProblem[] =>
  surfaceSolids(aircraft).flatMap((surface) => {
    if (boxGap(surface.solid, thing.solid) > 0 || mounted(thing, place, surface)) return [];
    const overlap = solidOverlap(thing.solid, surface.solid);
    const states = overlap && together(aircraft, thing, surface.sourceId);
    if (!overlap || !states || outOfAll(thing.solid, [], [surface]).outMm === 0) return [];
    const party: FitParty = {
      id: surface.sourceId,
      name: surface.name,
      what: 'surface',
      pieceId: surface.id,
    };
    return [
      {
        key: partiesKey('overlap', [thing.id, surface.sourceId]),
        kind: 'overlap',
        severity: 'bad',
        parties: [partyOf(thing), party],
        byMm: overlap.depthMm,
        states,
        atMm: null,
        clearByMm: overlap.clearByMm,
        rule: null,
      },
    ];
  });

/** In a wing it is the wing's thickness that counts, judged as what holds it. */
function mounted(thing: FitThing, place: PlaceFit | null, surface: SurfaceSolid): boolean {
  if (place?.where === 'surface') return true;
  return place?.where === 'hull' && !inTheOpen(thing) && surface.openToHull;
}

function bayProblem(aircraft: Aircraft, thing: FitThing): FitProblem[] {
  const part = thing.item && 'role' in thing.item ? thing.item : null;
  const fault = part && bayFault(aircraft, part);
  const states = fault && statesOf(aircraft, thing);
  if (!fault || !states) return [];
  const { bayId, bayName, overMm, moveByMm } = fault;
  return [
    {
      key: partiesKey('outOfBay', [thing.id], bayId),
      kind: 'outOfBay',
      severity: 'bad',
      parties: [partyOf(thing), { id: bayId, name: bayName, what: 'bay', pieceId: bayId }],
      byMm: overMm,
      states,
      atMm: null,
      clearByMm: moveByMm,
      rule: null,
    },
  ];
}
