import type { StoreApi } from 'zustand/vanilla';
import type { Aircraft } from '../model/document/types';
import { createCalmStore } from './calmStore';

interface Step {
  readonly label: string;
  readonly aircraft: Aircraft;
  readonly aircraftNumber: number;
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
  /** Another aircraft altogether, as one step: undo brings back the one before it, history and all. */
  replace(aircraft: Aircraft, label?: string): void;
}

/** `settle`: what becomes of an edit once it is committed: it may be for one variant only, or for all. */
export function createDocumentStore(
  initial: Aircraft,
  settle: (before: Aircraft, next: Aircraft) => Aircraft = (_, next) => next,
): DocumentStore {
  const api = createCalmStore<DocumentState>(() => ({
    committed: initial,
    preview: null,
    past: [],
    future: [],
    aircraftNumber: 0,
  }));
  const { getState, setState } = api;
  let aircraftCount = 0;

  const stepTo = (label: string, next: Aircraft, aircraftNumber: number) =>
    setState((state) => ({
      committed: next,
      aircraftNumber,
      preview: null,
      past: [...state.past, stepBack(state, label)],
      future: [],
    }));

  const commitVariants = (label: string, next: Aircraft) => {
    const { committed, aircraftNumber } = getState();
    if (next === committed) setState({ preview: null });
    else stepTo(label, next, aircraftNumber);
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
    replace: (aircraft, label = `Put ${aircraft.name} on the bench`) => {
      aircraftCount += 1;
      stepTo(label, aircraft, aircraftCount);
    },
  };
}

/** The way back to a state from the step that leaves it. */
const stepBack = ({ committed, aircraftNumber }: DocumentState, label: string): Step => ({
  label,
  aircraft: committed,
  aircraftNumber,
});

const seen = ({ aircraft, aircraftNumber }: Step) => ({ committed: aircraft, aircraftNumber, preview: null });
