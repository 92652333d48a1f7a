import type { Vec3 } from '../../engine/geometry/types';
import type { ShelfPart } from '../../model/airframe/shelf';
import { freeName } from '../../model/document/copyNames';
import { addPart } from '../../model/document/edit';
import { freeId } from '../../model/document/ids';
import type { Aircraft, Fuel, StructurePiece, TankItem } from '../../model/document/types';
import { bodyEnd, hullMiddleAt } from '../../model/fit/hullMiddle';
import type { Added } from './actions';

/** What can be built from its dimensions; the figures are a start, to be changed on the card. */
export type NewThing = 'fuselage' | 'wing' | 'tailplane' | 'fin' | 'boom' | 'leg' | 'block' | 'tank';

export const newThings: readonly { readonly kind: NewThing; readonly name: string; readonly says: string }[] =
  [
    { kind: 'fuselage', name: 'Fuselage tube', says: 'A hull through sections, nose to tail' },
    { kind: 'wing', name: 'Wing', says: 'A mirrored pair of panels' },
    { kind: 'tailplane', name: 'Tailplane', says: 'A mirrored pair of panels' },
    { kind: 'fin', name: 'Fin', says: 'One panel, standing up' },
    { kind: 'boom', name: 'Boom', says: 'A round tube between two points' },
    { kind: 'leg', name: 'Undercarriage legs', says: 'A pair of struts with wheels' },
    { kind: 'block', name: 'Block', says: 'A former, a mount, a piece of foam' },
    { kind: 'tank', name: 'Tank', says: 'A box that holds fuel or water' },
  ];

const weighed = (massG: number) => ({ by: 'weighed', massG }) as const;

type WithoutId<T> = T extends unknown ? Omit<T, 'id'> : never;

const panel = (spanMm: number, tipChordMm: number, sweepMm: number, tipThicknessPct: number) => ({
  spanMm,
  tipChordMm,
  sweepMm,
  dihedralDeg: 0,
  twistDeg: 0,
  tipThicknessPct,
});

const section = (stationMm: number, widthMm: number, heightMm: number) => ({
  stationMm,
  widthMm,
  heightMm,
  waterlineMm: 0,
  roundness: 0.7,
});

const TAIL_CHORD_MM = 150;
const FIN_CHORD_MM = 190;

/** Where a piece belongs: the wing about the CG, a tail at the body's end, legs under the body; mm. */
function belongs(aircraft: Aircraft, atMm: number) {
  const end = bodyEnd(aircraft) ?? { stationMm: atMm + 750, waterlineMm: 20, topMm: 20 };
  const hull = hullMiddleAt(aircraft, atMm);
  return {
    waterlineMm: Math.round(hull?.waterlineMm ?? 0),
    undersideMm: Math.round(hull ? hull.waterlineMm - hull.heightMm / 2 : -50),
    tail: [Math.round(end.stationMm - TAIL_CHORD_MM), 0, Math.round(end.waterlineMm)] as const,
    fin: [Math.round(end.stationMm - FIN_CHORD_MM), 0, Math.round(end.topMm)] as const,
    aftMm: Math.round(bodyEnd(aircraft)?.stationMm ?? atMm),
    aftWaterlineMm: Math.round(end.waterlineMm),
  };
}

/** A piece of structure near a station, mm, where it belongs on the body. */
function structurePiece(
  kind: Exclude<NewThing, 'tank'>,
  atMm: number,
  place: ReturnType<typeof belongs>,
): WithoutId<StructurePiece> {
  const surface = { kind: 'surface', incidenceDeg: 0, rootThicknessPct: 12, cantDeg: 0 } as const;
  switch (kind) {
    case 'fuselage':
      return {
        kind,
        name: 'Fuselage',
        sides: 'centre',
        buttlineMm: 0,
        sections: [section(0, 60, 60), section(250, 110, 120), section(600, 100, 110), section(1100, 40, 50)],
        skinMm: 2,
        mass: weighed(420),
      };
    case 'wing':
      return {
        ...surface,
        name: 'Wing',
        role: 'wing',
        sides: 'both',
        rootMm: [atMm - 80, 0, place.waterlineMm],
        rootChordMm: 260,
        panels: [panel(750, 190, 30, 12)],
        mass: weighed(310),
      };
    case 'tailplane':
      return {
        ...surface,
        name: 'Tailplane',
        role: 'tailplane',
        sides: 'both',
        rootMm: place.tail,
        rootChordMm: TAIL_CHORD_MM,
        rootThicknessPct: 9,
        panels: [panel(260, 110, 20, 9)],
        mass: weighed(45),
      };
    case 'fin':
      return {
        ...surface,
        name: 'Fin',
        role: 'fin',
        sides: 'centre',
        cantDeg: 90,
        rootMm: place.fin,
        rootChordMm: FIN_CHORD_MM,
        rootThicknessPct: 9,
        panels: [panel(200, 110, 60, 9)],
        mass: weighed(48),
      };
    case 'boom':
      return {
        kind,
        name: 'Boom',
        sides: 'centre',
        frontMm: [place.aftMm, 0, place.aftWaterlineMm],
        rearMm: [place.aftMm + 700, 0, place.aftWaterlineMm],
        frontDiameterMm: 22,
        rearDiameterMm: 14,
        mass: weighed(85),
      };
    case 'leg':
      return {
        kind,
        name: 'Main leg',
        sides: 'both',
        topMm: [atMm, 50, place.undersideMm],
        axleMm: [atMm + 10, 180, place.undersideMm - 140],
        strutDiameterMm: 6,
        strutMassG: 60,
        wheelDiameterMm: 80,
        wheelWidthMm: 28,
        wheelMassG: 42,
      };
    case 'block':
      return {
        kind,
        name: 'Block',
        sides: 'centre',
        shape: { kind: 'box', lengthMm: 40, widthMm: 80, heightMm: 40 },
        positionMm: [atMm, 0, place.waterlineMm],
        yawDeg: 0,
        pitchDeg: 0,
        rollDeg: 0,
        mass: weighed(40),
      };
  }
}

/** What a tank holds when nobody has said yet: petrol, density as commonly printed on the can. */
export const petrol: Fuel = {
  kind: 'petrol',
  name: 'Petrol',
  densityGPerMl: 0.74,
  use: 'burn',
  share: 'volume',
  flow: { idleMlPerMin: 4, fullMlPerMin: 24 },
  profile: { name: 'Circuits', phases: [{ name: 'Circuits', durationS: 600, throttlePct: 45 }] },
  reservePct: 20,
};

/** Adds a piece of structure or a tank near a station, with an id of its own. */
export function addThing(aircraft: Aircraft, kind: NewThing, atMm: number): Added {
  if (kind !== 'tank') {
    const made = structurePiece(kind, atMm, belongs(aircraft, atMm));
    const piece = { ...made, name: freeName(aircraft, made.name) };
    const id = freeId(aircraft, piece.name);
    return { aircraft: { ...aircraft, structure: [...aircraft.structure, { ...piece, id }] }, id };
  }
  const name = freeName(aircraft, 'Tank');
  const id = freeId(aircraft, name);
  const tank: TankItem = {
    id,
    name,
    shape: { kind: 'box', lengthMm: 120, widthMm: 70, heightMm: 60 },
    positionMm: [atMm, 0, 0],
    yawDeg: 0,
    pitchDeg: 0,
    rollDeg: 0,
    emptyMassG: 50,
    startMl: null,
    unusableMl: 10,
    feeds: 'outlet',
    rank: 1,
  };
  return { aircraft: { ...aircraft, tanks: [...aircraft.tanks, tank], fuel: aircraft.fuel ?? petrol }, id };
}

/** Sets a part from the shelf down at a point, turned as it lies there. */
export function addFromShelf(aircraft: Aircraft, part: ShelfPart, positionMm: Vec3): Added {
  return addPart(aircraft, { ...part, name: freeName(aircraft, part.name), positionMm });
}
