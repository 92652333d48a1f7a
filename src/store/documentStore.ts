import type { StoreApi } from 'zustand/vanilla';
import type { Aircraft } from '../model/document/types';
import { createCalmStore } from './calmStore';
import { newFleetId } from './fleetId';

/** One step of an aircraft's history: what it is called, and the aircraft on its far side. */
export interface Change {
  readonly label: string;
  readonly aircraft: Aircraft;
}

/** The history of one aircraft, oldest first; the future as an undo leaves it, the nearest step last. */
export interface History {
  readonly past: readonly Change[];
  readonly future: readonly Change[];
}

interface Step extends Change {
  readonly aircraftNumber: number;
  readonly fleetId: string;
}

/** The aircraft on the bench, what it was before each step, and the one being dragged, if any. */
export interface DocumentState {
  readonly committed: Aircraft;
  /** A live version while something is dragged or typed; null at rest. */
  readonly preview: Aircraft | null;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
  /** Changes with another aircraft altogether, whether it was opened or came back by an undo. */
  readonly aircraftNumber: number;
  /** Its place in the fleet. Whatever is put on the bench takes a place of its own, so nothing is written over. */
  readonly fleetId: string;
}

export interface DocumentStore {
  readonly api: StoreApi<DocumentState>;
  /** What everybody sees: the preview if there is one. */
  current(): Aircraft;
  subscribe(listener: () => void): () => void;
  /** One step that undo takes back. An edit that changed nothing is no step. */
  commit(label: string, next: Aircraft): void;
  /** The same for an edit of the variants themselves, which counts just as it is. */
  commitVariants(label: string, next: Aircraft): void;
  preview(next: Aircraft): void;
  /** Drops the preview; the committed aircraft is seen again. */
  cancel(): void;
  /** Turns the preview into one step. */
  commitPreview(label: string): void;
  undo(): void;
  redo(): void;
  /**
   * Another aircraft altogether, as one step: undo brings back the one before it, history and all. `fleetId` is its
   * place in the fleet where it has one already.
   */
  replace(aircraft: Aircraft, label?: string, fleetId?: string): void;
  /** Puts the steps of an earlier visit under those of this one. */
  recall(history: History): void;
  /** Shows what another tab made of this aircraft; no step, for that tab has it. */
  follow(aircraft: Aircraft): void;
  /** Gives what is on the bench another place in the fleet. */
  moveTo(fleetId: string): void;
}

/** `settle`: what becomes of an edit once it is committed: it may be for one variant only, or for all. */
export function createDocumentStore(
  initial: Aircraft,
  fleetId = newFleetId(),
  settle: (before: Aircraft, next: Aircraft) => Aircraft = (_, next) => next,
): DocumentStore {
  const api = createCalmStore<DocumentState>(() => ({
    committed: initial,
    preview: null,
    past: [],
    future: [],
    aircraftNumber: 0,
    fleetId,
  }));
  const { getState, setState } = api;
  let aircraftCount = 0;

  const stepTo = (label: string, next: Aircraft) =>
    setState((state) => ({
      committed: next,
      preview: null,
      past: [...state.past, stepBack(state, label)],
      future: [],
    }));

  const commitVariants = (label: string, next: Aircraft) => {
    if (next === getState().committed) setState({ preview: null });
    else stepTo(label, next);
  };
  const commit = (label: string, next: Aircraft) => {
    const { committed } = getState();
    commitVariants(label, next === committed ? next : settle(committed, next));
  };

  return {
    api,
    current: () => getState().preview ?? getState().committed,
    subscribe: (listener) => api.subscribe(listener),
    commit,
    commitVariants,
    preview: (next) => setState({ preview: next }),
    cancel: () => setState({ preview: null }),
    commitPreview: (label) => {
      const { preview } = getState();
      if (preview) commit(label, preview);
    },
    undo: () => {
      const state = getState();
      const step = state.past.at(-1);
      if (!step) return;
      setState({
        ...seen(step),
        past: state.past.slice(0, -1),
        future: [...state.future, stepBack(state, step.label)],
      });
    },
    redo: () => {
      const state = getState();
      const step = state.future.at(-1);
      if (!step) return;
      setState({
        ...seen(step),
        past: [...state.past, stepBack(state, step.label)],
        future: state.future.slice(0, -1),
      });
    },
    replace: (aircraft, label = `Put ${aircraft.name} on the bench`, place = newFleetId()) => {
      aircraftCount += 1;
      setState((state) => ({
        committed: aircraft,
        aircraftNumber: aircraftCount,
        fleetId: place,
        preview: null,
        past: [...state.past, stepBack(state, label)],
        future: [],
      }));
    },
    recall: ({ past, future }) =>
      setState((state) => {
        const others = state.past.length - ownSteps(state).length;
        const untouched = others === state.past.length && state.future.length === 0;
        return {
          past: [...state.past.slice(0, others), ...marked(past, state), ...state.past.slice(others)],
          ...(untouched && { future: marked(future, state) }),
        };
      }),
    follow: (aircraft) => setState({ committed: aircraft, preview: null, past: [], future: [] }),
    moveTo: (place) =>
      setState((state) => {
        const { aircraftNumber } = state;
        const moved = (step: Step) =>
          step.aircraftNumber === aircraftNumber ? { ...step, fleetId: place } : step;
        return { fleetId: place, past: state.past.map(moved), future: state.future.map(moved) };
      }),
  };
}

/** The steps that were made on the aircraft on the bench since it came there. */
export function ownSteps({ past, aircraftNumber }: DocumentState): readonly Change[] {
  const last = past.findLastIndex((step) => step.aircraftNumber !== aircraftNumber);
  return past.slice(last + 1);
}

/** The history of the aircraft on the bench alone, without the aircraft before and after it. */
export function historyOf(state: DocumentState): History {
  const { future, aircraftNumber } = state;
  const last = future.findLastIndex((step) => step.aircraftNumber !== aircraftNumber);
  return { past: ownSteps(state), future: future.slice(last + 1) };
}

const marked = (
  steps: readonly Change[],
  { aircraftNumber, fleetId }: Pick<Step, 'aircraftNumber' | 'fleetId'>,
): readonly Step[] => steps.map((step) => ({ ...step, aircraftNumber, fleetId }));

/** The way back to a state from the step that leaves it. */
const stepBack = ({ committed, aircraftNumber, fleetId }: DocumentState, label: string): Step => ({
  label,
  aircraft: committed,
  aircraftNumber,
  fleetId,
});

const seen = ({ aircraft, aircraftNumber, fleetId }: Step) => ({
  committed: aircraft,
  aircraftNumber,
  fleetId,
  preview: null,
});
