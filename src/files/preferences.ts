import type { UnitSystem } from '../model/units';
import type { TextStorage } from './storage';

/** What a person chose about the bench, not about an aircraft. */
export interface Preferences {
  readonly units: UnitSystem;
  /** `system` follows the machine. */
  readonly theme: 'system' | 'light' | 'dark';
}

export const defaultPreferences: Preferences = { units: 'metric', theme: 'system' };

const KEY = 'counterpoise.preferences';

/** The stored choices; what is missing, damaged or out of reach is as by default. */
export function readPreferences(storage: TextStorage): Preferences {
  try {
    const stored: unknown = JSON.parse(storage.getItem(KEY) ?? '{}');
    const { units, theme } = (stored ?? {}) as Partial<Record<keyof Preferences, unknown>>;
    return {
      units: units === 'metric' || units === 'inch-ounce' ? units : defaultPreferences.units,
      theme: theme === 'system' || theme === 'light' || theme === 'dark' ? theme : defaultPreferences.theme,
    };
  } catch {
    return defaultPreferences;
  }
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
