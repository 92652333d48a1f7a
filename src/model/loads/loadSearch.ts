import { flyingSwitches } from '../airframe/loadSwitches';
import type { Aircraft } from '../document/types';

/**
 * How far the search through the other load states has come. Only `done` and `not needed` are a clean bill: while it is
 * waiting, and when it has failed or run out of time, nothing is known of the other load states, and that has to be said.
 */
export type LoadSearch =
  | { readonly state: 'not needed' | 'waiting' | 'done' }
  | { readonly state: 'failed' | 'timed out'; readonly sentence: string };

export const NOT_NEEDED: LoadSearch = { state: 'not needed' };
export const WAITING: LoadSearch = { state: 'waiting' };
export const DONE: LoadSearch = { state: 'done' };

/** Whether an aircraft has load states that fly besides the one shown. */
export const hasOtherLoadStates = (aircraft: Aircraft): boolean => flyingSwitches(aircraft).length > 0;
