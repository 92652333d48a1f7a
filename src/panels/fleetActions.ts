import type { Aircraft } from '../model/document/types';

/** Why something was not done, in a sentence; null when it was. */
export type Refused = string | null;

/** What the panels ask of the fleet, handed in by the composition root. */
export interface FleetActions {
  /** Puts one on the bench; what is there keeps its own place. */
  open(id: string): Promise<Refused>;
  duplicate(id: string): Promise<Refused>;
  rename(id: string, name: string): Promise<Refused>;
  /** Puts one among the deleted, from where it comes back until it is forgotten. */
  remove(id: string): Promise<Refused>;
  restore(id: string): Promise<Refused>;
  forget(id: string): Promise<Refused>;
  /** Every aircraft with its revisions as one file. */
  saveAll(): Promise<Refused>;
  /** Takes in such a file; nothing is written over. */
  takeIn(): Promise<Refused>;
  keepRevision(name: string): Promise<Refused>;
  renameRevision(key: number, name: string): Promise<Refused>;
  forgetRevision(key: number): Promise<Refused>;
  /** The aircraft as it was; a sentence where it does not read. */
  readRevision(key: number): Promise<Aircraft | string>;
}
