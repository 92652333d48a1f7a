import { AT_START, type Positions, switchesOf } from '../airframe/loadSwitches';
import { shownText } from '../document/names';
import type { Aircraft, Part, Slide, SlideAgainst } from '../document/types';
import { chooseVariant, chosenVariant, variantsOf } from '../document/variants';

/** An aircraft as a slide has it: the document, and what is chosen about it. */
export interface ShownState {
  readonly aircraft: Aircraft;
  readonly positions: Positions;
  /** Usable liquid left, 1 full to 0 dry. */
  readonly fuel: number;
}

export interface ShownSlide {
  readonly now: ShownState;
  readonly against: ShownState | null;
  /** What the slide asks for and cannot be shown, a sentence each. */
  readonly missing: readonly string[];
}

const BURNS_UP = 'The burn of this slide is to end with more fuel than it begins with, so none is played.';

type Asked = Pick<Slide, 'variantId' | 'positions' | 'fuel'>;

/** What a slide shows of an aircraft; what is no longer there is told, and the rest is shown. */
export function shownSlide(aircraft: Aircraft, slide: Slide): ShownSlide {
  const missing: string[] = [];
  const now = stateOf(aircraft, slide, missing);
  const here = new Set(everything(now.aircraft));
  if (slide.selectedId !== undefined && !here.has(slide.selectedId))
    missing.push(`What this slide selects (“${shownText(slide.selectedId)}”) is no longer aboard.`);
  const { against, burn } = slide;
  if (burn && burn.to > slide.fuel) missing.push(BURNS_UP);
  return {
    now,
    against: against ? againstState(aircraft, against, missing) : null,
    missing: [...new Set(missing)],
  };
}

const everything = ({ parts, tanks, structure }: Aircraft) =>
  [...parts, ...tanks, ...structure].map(({ id }) => id);

function stateOf(aircraft: Aircraft, { variantId, positions, fuel }: Asked, missing: string[]): ShownState {
  const found = variantId === undefined || variantsOf(aircraft).some(({ id }) => id === variantId);
  if (!found) missing.push(`The variant of this slide (“${shownText(variantId)}”) is no longer there.`);
  const shown = found && variantId !== undefined ? chooseVariant(aircraft, variantId) : aircraft;
  return { aircraft: shown, positions: positionsOf(shown, positions, missing), fuel };
}

function positionsOf(aircraft: Aircraft, chosen: Slide['positions'], missing: string[]): Positions {
  if (!chosen) return AT_START;
  const switches = switchesOf(aircraft);
  const there = chosen.filter(({ of, in: position }) => {
    const found = switches.find(({ id }) => id === of)?.positions.some(({ id }) => id === position) ?? false;
    if (!found) missing.push(`The switch “${shownText(of)}” of this slide is no longer there as it was.`);
    return found;
  });
  return Object.fromEntries(there.map(({ of, in: position }) => [of, position]));
}

function againstState(aircraft: Aircraft, against: SlideAgainst, missing: string[]): ShownState {
  const state = stateOf(aircraft, against, missing);
  return { ...state, aircraft: withPlaces(state.aircraft, against.places ?? [], missing) };
}

type Posed = Pick<Part, 'positionMm' | 'yawDeg' | 'pitchDeg' | 'rollDeg'>;
type Places = NonNullable<SlideAgainst['places']>;

/** The aircraft with its parts and tanks where they stood, and as heavy as parts were. */
function withPlaces(aircraft: Aircraft, places: Places, missing: string[]): Aircraft {
  if (places.length === 0) return aircraft;
  const wanted = new Map(places.map(({ of, ...place }) => [of, place]));
  const gone = places.filter(({ of }) => !everything(aircraft).includes(of)).length;
  if (gone > 0)
    missing.push(
      gone === 1
        ? 'One thing of the state that this slide compares with is no longer aboard.'
        : `${gone} things of the state that this slide compares with are no longer aboard.`,
    );
  return {
    ...aircraft,
    parts: aircraft.parts.map((part) => {
      const place = wanted.get(part.id);
      return place ? { ...part, ...poseIn(place, part), massG: place.massG ?? part.massG } : part;
    }),
    tanks: aircraft.tanks.map((tank) => {
      const place = wanted.get(tank.id);
      return place ? { ...tank, ...poseIn(place, tank) } : tank;
    }),
  };
}

const poseIn = (place: Omit<Places[number], 'of'>, now: Posed): Posed => ({
  positionMm: place.positionMm ?? now.positionMm,
  yawDeg: place.yawDeg ?? now.yawDeg,
  pitchDeg: place.pitchDeg ?? now.pitchDeg,
  rollDeg: place.rollDeg ?? now.rollDeg,
});

/** The state on the bench, to be held against later: the variant, the switches, the fuel, and where everything stands. */
export function stateToKeep({ aircraft, positions, fuel }: ShownState): Omit<SlideAgainst, 'as' | 'name'> {
  const chosen = chosenVariant(aircraft);
  const poseOf = ({ positionMm, yawDeg, pitchDeg, rollDeg }: Posed): Posed => ({
    positionMm,
    yawDeg,
    pitchDeg,
    rollDeg,
  });
  return {
    ...(chosen && { variantId: chosen.id }),
    ...keptPositions(positions),
    fuel,
    places: [
      ...aircraft.parts.map((part) => ({ of: part.id, ...poseOf(part), massG: part.massG })),
      ...aircraft.tanks.map((tank) => ({ of: tank.id, ...poseOf(tank) })),
    ],
  };
}

/** Chosen switches as a slide keeps them; nothing where all are in their first position. */
export const keptPositions = (positions: Positions): Pick<Slide, 'positions'> => {
  const chosen = Object.entries(positions).map(([of, position]) => ({ of, in: position }));
  return chosen.length > 0 ? { positions: chosen } : {};
};
