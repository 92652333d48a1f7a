import { isNote } from '../model/document/names';
import { SECTIONS } from '../model/sheet/blocks';
import { FIRST_CHOICES, FIRST_OF_AIRCRAFT, type SheetChoices } from '../model/sheet/choices';
import { PAPERS } from '../model/sheet/paper';
import type { UnitSystem } from '../model/units';
import { FIRST_LAYERS, LAYERS, type Layers, LESSONS, type Lesson } from '../store/viewStore';
import type { TextStorage } from './storage';

/** What a person chose about the bench, not about an aircraft. */
export interface Preferences {
  readonly units: UnitSystem;
  /** `system` follows the machine. */
  readonly theme: 'system' | 'light' | 'dark';
  /** What the stage shows beside the aircraft. */
  readonly layers: Layers;
  /** What is seen to tilt in a climb. */
  readonly tilts: 'aircraft' | 'world';
  /** The gestures that were explained already. */
  readonly learned: readonly Lesson[];
  /** Of the build sheet: its paper, what is left out, and by whom; what goes with an aircraft is not kept. */
  readonly sheet: SheetChoices;
}

export const defaultPreferences: Preferences = {
  units: 'metric',
  theme: 'system',
  layers: FIRST_LAYERS,
  tilts: 'aircraft',
  learned: [],
  sheet: FIRST_CHOICES,
};

const KEY = 'counterpoise.preferences';

/** The stored choices; what is missing, damaged or out of reach is as by default. */
export function readPreferences(storage: TextStorage): Preferences {
  try {
    const stored: unknown = JSON.parse(storage.getItem(KEY) ?? '{}');
    const { units, theme, layers, tilts, learned, sheet } = (stored ?? {}) as Partial<
      Record<keyof Preferences, unknown>
    >;
    return {
      units: units === 'metric' || units === 'inch-ounce' ? units : defaultPreferences.units,
      theme: theme === 'system' || theme === 'light' || theme === 'dark' ? theme : defaultPreferences.theme,
      layers: readLayers(layers),
      tilts: tilts === 'world' ? 'world' : defaultPreferences.tilts,
      learned: Array.isArray(learned) ? LESSONS.filter((lesson) => learned.includes(lesson)) : [],
      sheet: readSheet(sheet),
    };
  } catch {
    return defaultPreferences;
  }
}

/** The longest name of a person that is kept. */
const LONGEST_BY = 60;

/** What was chosen of the sheet as stored, or as at first. */
function readSheet(stored: unknown): SheetChoices {
  const given = (typeof stored === 'object' && stored !== null ? stored : {}) as Record<string, unknown>;
  const { paper, leftOut, by } = given;
  return {
    paper: PAPERS.find((id) => id === paper) ?? FIRST_CHOICES.paper,
    leftOut: Array.isArray(leftOut) ? SECTIONS.filter((id) => leftOut.includes(id)) : [],
    by: typeof by === 'string' && isNote(by) ? by.slice(0, LONGEST_BY) : '',
    ...FIRST_OF_AIRCRAFT,
  };
}

/** Each layer as stored, or as at first. */
function readLayers(stored: unknown): Layers {
  const given = (typeof stored === 'object' && stored !== null ? stored : {}) as Record<string, unknown>;
  const of = (layer: (typeof LAYERS)[number]) => {
    const shown = given[layer];
    return typeof shown === 'boolean' ? shown : FIRST_LAYERS[layer];
  };
  return Object.fromEntries(LAYERS.map((layer) => [layer, of(layer)])) as unknown as Layers;
}

/** Keeps the choices; false when the browser does not let it. */
export function writePreferences(storage: TextStorage, preferences: Preferences): boolean {
  try {
    const { paper, leftOut, by } = preferences.sheet;
    storage.setItem(KEY, JSON.stringify({ ...preferences, sheet: { paper, leftOut, by } }));
    return true;
  } catch {
    return false;
  }
}
