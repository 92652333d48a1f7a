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
}

export const defaultPreferences: Preferences = {
  units: 'metric',
  theme: 'system',
  layers: FIRST_LAYERS,
  tilts: 'aircraft',
  learned: [],
};

const KEY = 'counterpoise.preferences';

/** The stored choices; what is missing, damaged or out of reach is as by default. */
export function readPreferences(storage: TextStorage): Preferences {
  try {
    const stored: unknown = JSON.parse(storage.getItem(KEY) ?? '{}');
    const { units, theme, layers, tilts, learned } = (stored ?? {}) as Partial<
      Record<keyof Preferences, unknown>
    >;
    return {
      units: units === 'metric' || units === 'inch-ounce' ? units : defaultPreferences.units,
      theme: theme === 'system' || theme === 'light' || theme === 'dark' ? theme : defaultPreferences.theme,
      layers: readLayers(layers),
      tilts: tilts === 'world' ? 'world' : defaultPreferences.tilts,
      learned: Array.isArray(learned) ? LESSONS.filter((lesson) => learned.includes(lesson)) : [],
    };
  } catch {
    return defaultPreferences;
  }
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
    storage.setItem(KEY, JSON.stringify(preferences));
    return true;
  } catch {
    return false;
  }
}
