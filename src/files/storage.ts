/** What this folder needs of the browser's localStorage; a test brings a map. */
export interface TextStorage {
  getItem(key: string): string | null;
  setItem(key: string, value: string): void;
  removeItem(key: string): void;
}
