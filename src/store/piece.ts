import { createCalmStore } from './calmStore';

export interface PieceState<T> {
  /** Null until it is there. */
  readonly piece: T | null;
  /** Why it is not there; null while it is being fetched. */
  readonly failure: Error | null;
}

/** A part of the bench that is fetched from the page's own files when it is first wanted. */
export interface Piece<T> {
  get(): PieceState<T>;
  subscribe(listener: () => void): () => void;
  /** Fetches it once; a piece that failed waits for `retry`. */
  want(): void;
  /** Fetches it anew after a failure. */
  retry(): void;
}

export function createPiece<T>(fetchPiece: () => Promise<T>): Piece<T> {
  const api = createCalmStore<PieceState<T>>(() => ({ piece: null, failure: null }));
  let fetching = false;
  const begin = () => {
    if (fetching || api.getState().piece !== null) return;
    fetching = true;
    api.setState({ failure: null });
    fetchPiece().then(
      (piece) => {
        fetching = false;
        api.setState({ piece });
      },
      (error: unknown) => {
        fetching = false;
        api.setState({ failure: error instanceof Error ? error : new Error(String(error)) });
      },
    );
  };
  return {
    get: api.getState,
    subscribe: (listener) => api.subscribe(listener),
    want: () => {
      if (api.getState().failure === null) begin();
    },
    retry: begin,
  };
}
