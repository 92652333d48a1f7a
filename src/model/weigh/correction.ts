import type { Vec3 } from '../../engine/geometry/types';
import { mirroredShape } from '../../engine/mass/mirroredShape';
import type { Culprit } from '../../engine/weigh/rankCulprits';
import type { UnaccountedFor } from '../../engine/weigh/unaccountedFor';
import { shelf } from '../airframe/shelf';
import { addPart, itemById, placeItem, removeItem, updatePart, updateTank } from '../document/edit';
import type { Aircraft, Part } from '../document/types';
import { fitRefusals } from '../place/fitRefusals';
import type { Thought } from './thought';
import { noteCorrected } from './weighIns';

/** One change to the list that a weigh-in asks for; it is carried out only when a person presses its button. */
export type Correction =
  | { readonly kind: 'mass'; readonly id: string; readonly massG: number }
  | {
      readonly kind: 'place';
      readonly id: string;
      readonly positionMm: Vec3;
      /** It is turned left for right as well, as the other one of a pair would be. */
      readonly mirrored: boolean;
    }
  | { readonly kind: 'remove'; readonly id: string }
  | { readonly kind: 'add'; readonly part: Omit<Part, 'id'> };

/** What is added to make up for something has no size to speak of, mm. */
const POINT_MM = 10;

/** Figures that no scale or tape reads are rounded off: g and mm. */
const tenth = (value: number) => Math.round(value * 10) / 10;
const rounded = ([x, y, z]: Vec3): Vec3 => [tenth(x), tenth(y), tenth(z)];

const makeUp = (name: string, massG: number, positionMm: Vec3, notes: string): Omit<Part, 'id'> => ({
  name,
  role: 'other',
  shape: { kind: 'box', lengthMm: POINT_MM, widthMm: POINT_MM, heightMm: POINT_MM },
  massG: tenth(massG),
  positionMm: rounded(positionMm),
  yawDeg: 0,
  pitchDeg: 0,
  rollDeg: 0,
  massFrom: 'assumed',
  inTheOpen: true,
  notes,
});

/**
 * What would have to change if this is what went wrong. Parts and tanks are changed themselves; structure is left as it is and gets an
 * entry of its own beside it. Null where nothing can be written down: structure that is too heavy, or an item that holds the liquid.
 */
export function correctionOf(
  aircraft: Aircraft,
  culprit: Culprit,
  { suspects, sources, names, dryIds }: Thought,
): Correction | null {
  const { kind, id, massG, positionMm } = culprit;
  if (kind === 'forgotten') {
    const part = shelf[Number(id)];
    return part ? { kind: 'add', part: { ...part, positionMm: rounded(positionMm) } } : null;
  }
  // The readings blame one of a mirrored pair, and whatever is written down for it is written for both.
  if (kind !== 'not-aboard' && itemById(aircraft, id)?.twinId !== undefined) return null;
  // How much liquid was aboard is said by the weigh-in, not by the list.
  if (!dryIds.has(id)) return null;
  const sourceId = sources.get(id) ?? id;
  const item = id === sourceId ? itemById(aircraft, sourceId) : undefined;
  const suspected = suspects.find((suspect) => suspect.id === id);
  if (!suspected?.mass.cgMm) return null;
  if (kind === 'not-aboard') return item ? { kind: 'remove', id } : null;
  if (kind === 'not-weighed' || kind === 'mass-times-ten' || kind === 'mass-unit') {
    if (item) return massG > 0 ? { kind: 'mass', id, massG: tenth(massG) } : null;
    const moreG = massG - suspected.mass.massG;
    if (!(moreG > 0)) return null;
    const name = `Correction for ${names.get(id) ?? id}`;
    return {
      kind: 'add',
      part: makeUp(name, moreG, suspected.mass.cgMm, 'What the scales say is missing there.'),
    };
  }
  if (!item) return null;
  return {
    kind: 'place',
    id,
    positionMm: placeMeant(item.positionMm, culprit),
    mirrored: kind === 'mirrored',
  };
}

/** The place that was meant by what was typed, mm; a coordinate that the slip is not about stays to the last digit. */
export const placeMeant = (typedMm: Vec3, { axis: about, factor }: Pick<Culprit, 'axis' | 'factor'>): Vec3 =>
  typedMm.map((typed, axis) =>
    about === null || about === axis ? tenth(typed * (factor ?? 1)) : typed,
  ) as unknown as Vec3;

/** "Something unaccounted for" as an entry of its own; null where it has no place, or would weigh less than nothing. */
export function unaccountedEntry({ massG, placeMm }: UnaccountedFor): Correction | null {
  const [station, buttline, waterline] = placeMm;
  if (!(massG.value > 0) || !station) return null;
  const notes = 'What the weigh-in has over the list.';
  return {
    kind: 'add',
    part: makeUp(
      'Unaccounted for',
      massG.value,
      [station.value, buttline?.value ?? 0, waterline?.value ?? 0],
      waterline ? notes : `${notes} Its height is not known.`,
    ),
  };
}

/** The list after the change, and nothing else in it touched. */
export function applyCorrection(aircraft: Aircraft, correction: Correction): Aircraft {
  switch (correction.kind) {
    case 'mass':
      return aircraft.parts.some(({ id }) => id === correction.id)
        ? updatePart(aircraft, correction.id, { massG: correction.massG })
        : updateTank(aircraft, correction.id, { emptyMassG: correction.massG });
    case 'place':
      return placeItem(
        correction.mirrored ? turnedOver(aircraft, correction.id) : aircraft,
        correction.id,
        correction.positionMm,
      );
    case 'remove':
      return removeItem(aircraft, correction.id);
    case 'add':
      return addPart(aircraft, correction.part).aircraft;
  }
}

/** The list after the change, with the change noted in the log of the weigh-in that asked for it. */
export const applyAndNote = (
  aircraft: Aircraft,
  correction: Correction,
  { weighInId, date, what }: { readonly weighInId: string; readonly date: string; readonly what: string },
): Aircraft => noteCorrected(applyCorrection(aircraft, correction), weighInId, date, what);

/** What the fit would have against the list after the change and has not against it now. */
export const fitAfter = (aircraft: Aircraft, correction: Correction): readonly string[] =>
  fitRefusals(aircraft, applyCorrection(aircraft, correction)).map(({ sentence }) => sentence);

/** How far from where it was thought an added entry may be set aside, across and up, so that it runs into nothing; mm. */
const ASIDE_MM = [0, 12, -12, 24, -24, 40, -40, 60, -60, 90, -90] as const;

/** Which of its coordinates besides the station a weigh-in has said. */
export interface PlaceKnown {
  readonly buttline: boolean;
  readonly waterline: boolean;
}

/**
 * An added entry where it runs into nothing: what was measured of its place stands, its height gives way first, then its buttline. As it
 * was where no such place is near.
 */
export function setClear(
  aircraft: Aircraft,
  correction: Correction,
  { buttline, waterline }: PlaceKnown,
): Correction {
  if (correction.kind !== 'add') return correction;
  const [x, y, z] = correction.part.positionMm;
  for (const across of buttline ? [0] : ASIDE_MM) {
    for (const up of waterline ? [0] : ASIDE_MM) {
      const positionMm: Vec3 = [x, y + across, z + up];
      const moved: Correction = { kind: 'add', part: { ...correction.part, positionMm } };
      if (fitAfter(aircraft, moved).length === 0) return moved;
    }
  }
  return correction;
}

/** A part or tank turned left for right where it stands: shape, yaw and roll. */
function turnedOver(aircraft: Aircraft, id: string): Aircraft {
  const part = aircraft.parts.find((part) => part.id === id);
  const tank = aircraft.tanks.find((tank) => tank.id === id);
  if (part) {
    const { shape, yawDeg, rollDeg } = part;
    return updatePart(aircraft, id, {
      shape: mirroredShape(shape),
      yawDeg: 0 - yawDeg,
      rollDeg: 0 - rollDeg,
    });
  }
  if (!tank) return aircraft;
  const { mirrored = false, yawDeg, rollDeg } = tank;
  return updateTank(aircraft, id, { mirrored: !mirrored, yawDeg: 0 - yawDeg, rollDeg: 0 - rollDeg });
}
