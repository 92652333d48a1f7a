import type { MeshAs, MeshAsk, MeshReading } from '../model/airframe/meshReading';
import type { MeshUse } from '../model/airframe/ownMesh';
import { mostOf } from '../model/document/schema/limits';
import { createCalmStore } from './calmStore';

export type AskMesh = (ask: MeshAsk, signal: AbortSignal) => Promise<MeshReading>;

/** A mesh file that is being looked at before it goes aboard. */
export interface MeshInHand {
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly use: MeshUse;
  /** The hull that it takes the place of, or null where it becomes a new item. */
  readonly hullId: string | null;
  /** The last answer; it stays while another is awaited. Null before the first. */
  readonly read: MeshReading | null;
  readonly reading: boolean;
}

export interface MeshStore {
  get(): MeshInHand | null;
  subscribe(listener: () => void): () => void;
  /** Who reads files; until then one that is opened waits. */
  start(ask: AskMesh): void;
  open(name: string, bytes: Uint8Array): void;
  take(as: Partial<MeshAs>): void;
  useAs(use: MeshUse, hullId?: string | null): void;
  close(): void;
}

/** The one mesh file in hand, read anew for each unit and each way that its axes are taken. */
export function createMeshStore(): MeshStore {
  const api = createCalmStore<{ readonly inHand: MeshInHand | null }>(() => ({ inHand: null }));
  let ask: AskMesh | null = null;
  let as: MeshAs = { unit: null, nose: null, up: null };
  let asked: AbortController | null = null;

  const read = async () => {
    const { inHand } = api.getState();
    if (!inHand || !ask) return;
    asked?.abort();
    const mine = new AbortController();
    asked = mine;
    api.setState({ inHand: { ...inHand, reading: true } });
    const { name, bytes } = inHand;
    const answer = await ask({ name, bytes, ...as, mostTriangles: mostOf.triangles }, mine.signal).catch(
      (error: unknown): MeshReading => ({
        ok: false,
        sentence: error instanceof Error ? error.message : String(error),
      }),
    );
    const now = api.getState().inHand;
    if (mine.signal.aborted || !now) return;
    api.setState({ inHand: { ...now, read: answer, reading: false } });
  };

  return {
    get: () => api.getState().inHand,
    subscribe: (listener) => api.subscribe(listener),
    start: (reader) => {
      ask = reader;
      void read();
    },
    open: (name, bytes) => {
      as = { unit: null, nose: null, up: null };
      api.setState({ inHand: { name, bytes, use: 'fuselage', hullId: null, read: null, reading: true } });
      void read();
    },
    take: (change) => {
      const { inHand } = api.getState();
      if (inHand?.read?.ok) {
        const { unit, nose, up } = inHand.read;
        as = { unit, nose, up };
      }
      as = { ...as, ...change };
      void read();
    },
    useAs: (use, hullId = null) => {
      const { inHand } = api.getState();
      if (inHand) api.setState({ inHand: { ...inHand, use, hullId } });
    },
    close: () => {
      asked?.abort();
      api.setState({ inHand: null });
    },
  };
}
