import * as v from 'valibot';
import {
  about,
  angleDeg,
  choice,
  id,
  label,
  list,
  massG,
  note,
  pointMm,
  record,
  sizeMm,
  unit,
} from './fields';
import { mostOf } from './limits';

/** What the stage says beside the aircraft itself. */
export const layers = ['cg', 'stability', 'fit', 'leads', 'rooms', 'inertia'] as const;
/** Ways of looking into the aircraft. */
export const looks = ['cut', 'xray', 'exploded', 'quiet'] as const;
export const views = ['free', 'side', 'top', 'front'] as const;

/** Figures of the answer that a slide may show large. */
export const slideFigures = [
  'verdict',
  'cg-full',
  'cg-dry',
  'band',
  'travel',
  'margin',
  'sideways',
  'mass',
] as const;

/** The most slides of a talk: an hour of them. */
export const mostSlides = 60;

const LEAST_S = 1;
const MOST_S = 120;
const SECONDS_WANTED = `Expected ${LEAST_S} to ${MOST_S} s`;
const G_WANTED = 'Expected −1000 to 1000 times g';
const forwardG = v.pipe(v.number(G_WANTED), v.minValue(-1000, G_WANTED), v.maxValue(1000, G_WANTED));

const attitude = record(
  { pitchDeg: angleDeg, rollDeg: angleDeg, forwardG },
  'how the aircraft is held: nose up +, right wing down +, acceleration along the nose in g; level when left out',
);

const chosen = record({ of: about(id, 'the switch'), in: about(id, 'its position') });
const positions = about(
  v.optional(list(chosen, mostOf.switches)),
  'switches that are not in their first position',
);

const eye = record(
  {
    atMm: about(pointMm, 'what is in the middle of the picture'),
    fromMm: about(v.optional(pointMm), 'where the eye of the free view stands'),
    wideMm: about(sizeMm, 'how much is seen there from left to right, mm'),
    highMm: about(sizeMm, 'the same from top to bottom, mm'),
  },
  'where it is looked at from; all of the aircraft when left out',
);

const burn = record(
  {
    to: about(unit, 'usable liquid left at the end, 1 full to 0 dry'),
    seconds: about(
      v.pipe(
        v.number(SECONDS_WANTED),
        v.minValue(LEAST_S, SECONDS_WANTED),
        v.maxValue(MOST_S, SECONDS_WANTED),
      ),
      'how long it is played, s',
    ),
  },
  'the tanks empty while the slide is shown, from its own fuel on',
);

const place = record({
  of: about(id, 'the part or tank'),
  positionMm: v.optional(pointMm),
  yawDeg: v.optional(angleDeg),
  pitchDeg: v.optional(angleDeg),
  rollDeg: v.optional(angleDeg),
  massG: about(v.optional(massG), 'of a part'),
});

const against = record(
  {
    as: about(choice(['ghost', 'beside']), 'as outlines in the same picture, or in a picture of its own'),
    name: label,
    variantId: v.optional(id),
    positions,
    fuel: about(unit, 'usable liquid left, 1 full to 0 dry'),
    places: about(
      v.optional(list(place, mostOf.parts)),
      'where parts and tanks stood, and what parts weighed, when this was noted',
    ),
  },
  'another state of the aircraft that the slide holds it against',
);

const slide = record(
  {
    id,
    title: label,
    note: about(v.optional(note), 'for the one who speaks; not on the slide'),
    view: choice(views),
    eye: v.optional(eye),
    fuel: about(unit, 'usable liquid left, 1 full to 0 dry'),
    attitude: v.optional(attitude),
    positions,
    layers: list(choice(layers), layers.length),
    looking: v.optional(list(choice(looks), looks.length)),
    hidden: v.optional(list(id, mostOf.parts)),
    selectedId: v.optional(id),
    variantId: v.optional(id),
    figures: about(list(choice(slideFigures), slideFigures.length), 'what is written large'),
    burn: v.optional(burn),
    against: v.optional(against),
  },
  'a bookmark of how the bench was looked at',
);

export const talk = about(
  v.optional(list(slide, mostSlides)),
  'slides to present the aircraft with, in their order',
);
