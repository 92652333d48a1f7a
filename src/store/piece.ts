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
  /** Fetches it again after a failure. */
  retry(): void;
  /** The piece once it is there, fetched again if it failed before; rejects when it fails again. */
  fetched(): Promise<T>;
}

/**
 * `load` imports a module and `pick` takes the piece out of it. A browser remembers a module that did not come and does
 * not ask for it again under the same address. So the server is asked first whether it is there, and a module that did
 * not come all the same is asked for under an address that differs by what follows its question mark.
 */
export function createPiece<M, T>(load: () => Promise<M>, pick: (module: M) => T): Piece<T> {
  const api = createCalmStore<PieceState<T>>(() => ({ piece: null, failure: null }));
  let fetching: Promise<T> | null = null;
  let failed: string | null = null;
  let attempts = 0;

  const fetchModule = async (): Promise<M> => {
    attempts += 1;
    await reachServer();
    if (failed !== null) return import(/* @vite-ignore */ `${failed}?attempt=${attempts}`) as Promise<M>;
    return load();
  };
  const fetchPiece = async (): Promise<T> => {
    try {
      const piece = pick(await fetchModule());
      fetching = null;
      api.setState({ piece });
      return piece;
    } catch (error) {
      fetching = null;
      failed ??= addressIn(error);
      const failure = error instanceof Error ? error : new Error(String(error));
      api.setState({ failure });
      throw failure;
    }
  };
  const fetched = (): Promise<T> => {
    const { piece } = api.getState();
    if (piece !== null) return Promise.resolve(piece);
    if (fetching === null) {
      api.setState({ failure: null });
      fetching = fetchPiece();
    }
    return fetching;
  };
  // Told by the state, so that nobody need wait for the promise.
  const retry = () => void fetched().catch(() => {});
  return {
    get: api.getState,
    subscribe: (listener) => api.subscribe(listener),
    want: () => {
      if (api.getState().failure === null) retry();
    },
    retry,
    fetched,
  };
}

/** Rejects when nobody answers; what is answered does not matter. */
async function reachServer(): Promise<void> {
  asking ??= fetch(location.href, { method: 'HEAD', cache: 'no-store' }).finally(() => {
    asking = null;
  });
  await asking;
}

/** Pieces that are wanted together ask once. */
let asking: Promise<unknown> | null = null;

/** The address of a module that did not come, which browsers put into their error; null when it is about something else. */
const addressIn = (error: unknown): string | null =>
  /module.*?(https?:\S+?\.js)/is.exec(error instanceof Error ? error.message : '')?.[1] ?? null;
