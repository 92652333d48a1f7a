/** What this folder needs of the browser's localStorage; a test brings a map. */
export interface TextStorage {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
  /** The names of everything that is kept. */
  keys(): readonly string[];
}

/** Of one tab alone, as long as it is open. */
export const tabStorage: TextStorage = {
  getItem: (key) => sessionStorage.getItem(key),
  setItem: (key, value) => sessionStorage.setItem(key, value),
  removeItem: (key) => sessionStorage.removeItem(key),
  keys: () => Object.keys(sessionStorage),
};

/** The page's own store. Reading it throws where the browser shuts it off, as autosave and preferences expect. */
export const pageStorage: TextStorage = {
  getItem: (key) => localStorage.getItem(key),
  setItem: (key, value) => localStorage.setItem(key, value),
  removeItem: (key) => localStorage.removeItem(key),
  keys: () => Object.keys(localStorage),
};

/** Whether a store refused for want of room. */
export const isFull = (error: unknown): boolean =>
  error instanceof Error && /quota/i.test(`${error.name} ${error.message}`);

/** Why a store refused, in words that end without a full stop. */
export const reason = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).trim().replace(/\.$/, '') || 'no reason was given';
