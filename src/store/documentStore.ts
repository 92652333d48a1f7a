import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Aircraft } from '../model/document/types';

interface Step {
  readonly label: string;
  readonly aircraft: Aircraft;
}

/** The aircraft on the bench, what it was before each step, and the one being dragged, if any. */
export interface DocumentState {
  readonly committed: Aircraft;
  /** A live version while something is dragged or typed; null at rest. */
  readonly preview: Aircraft | null;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
}

export interface DocumentStore {
  readonly api: StoreApi<DocumentState>;
  /** What everybody sees: the preview if there is one. */
  current(): Aircraft;
  subscribe(listener: () => void): () => void;
  /** One step that undo takes back. An edit that changed nothing is no step. */
  commit(label: string, next: Aircraft): void;
  preview(next: Aircraft): void;
  /** Drops the preview; the committed aircraft is seen again. */
  cancel(): void;
  /** Turns the preview into one step. */
  commitPreview(label: string): void;
  undo(): void;
  redo(): void;
  /** Another aircraft altogether, with a history of its own. */
  replace(aircraft: Aircraft): void;
}

export function createDocumentStore(initial: Aircraft): DocumentStore {
  const fresh = (aircraft: Aircraft): DocumentState => ({
    committed: aircraft,
    preview: null,
    past: [],
    future: [],
  });
  const api = createStore<DocumentState>(() => fresh(initial));
  const { getState, setState } = api;

  const commit = (label: string, next: Aircraft) => {
    const { committed, past } = getState();
    if (next === committed) return setState({ preview: null });
    setState({ committed: next, preview: null, past: [...past, { label, aircraft: committed }], future: [] });
  };

  return {
    api,
    current: () => getState().preview ?? getState().committed,
    subscribe: (listener) => api.subscribe(listener),
    commit,
    preview: (next) => setState({ preview: next }),
    cancel: () => setState({ preview: null }),
    commitPreview: (label) => {
      const { preview } = getState();
      if (preview) commit(label, preview);
    },
    undo: () => {
      const { committed, past, future } = getState();
      const step = past.at(-1);
      if (!step) return;
      setState({
        committed: step.aircraft,
        preview: null,
        past: past.slice(0, -1),
        future: [...future, { label: step.label, aircraft: committed }],
      });
    },
    redo: () => {
      const { committed, past, future } = getState();
      const step = future.at(-1);
      if (!step) return;
      setState({
        committed: step.aircraft,
        preview: null,
        past: [...past, { label: step.label, aircraft: committed }],
        future: future.slice(0, -1),
      });
    },
    replace: (aircraft) => setState(fresh(aircraft)),
  };
}
