import { thinned } from '../../model/history/thinning';
import type { FleetCard, Revision } from '../../store/fleetStore';
import type { Shelves, Write } from './shelves';

/** An aircraft as the fleet holds it. */
export interface Kept {
  readonly text: string;
  /** Its steps, packed; null where there are none. */
  readonly history: string | null;
  /** Another one with every writing: who wants to write over a state must have seen it. */
  readonly stamp: string;
}

/** A revision with its aircraft. */
export interface KeptRevision extends Revision {
  readonly fleetId: string;
  readonly text: string;
}

export interface Put {
  readonly card: FleetCard;
  readonly text: string;
  readonly history: string | null;
  /** The stamp that was seen last; null for a place that should be free. */
  readonly seen: string | null;
}

export interface Fleet {
  cards(): Promise<readonly FleetCard[]>;
  read(fleetId: string): Promise<Kept | null>;
  /** Writes an aircraft into its place and gives the new stamp. A state that was not seen becomes a revision first. */
  put(put: Put): Promise<string>;
  /** Changes what a card says, where there is one. */
  change(fleetId: string, change: (card: FleetCard) => FleetCard): Promise<void>;
  /** Takes an aircraft out of the fleet for good, its revisions too. */
  forget(fleetId: string): Promise<void>;
  /** Those of one aircraft, latest first. */
  revisions(fleetId: string): Promise<readonly KeptRevision[]>;
  keepRevision(revision: Omit<KeptRevision, 'key'>): Promise<void>;
  /** Several of one aircraft at once. */
  keepRevisions(fleetId: string, revisions: readonly Omit<KeptRevision, 'key'>[]): Promise<void>;
  renameRevision(fleetId: string, key: number, name: string | null): Promise<void>;
  forgetRevision(fleetId: string, key: number): Promise<void>;
}

const revisionKey = (fleetId: string, key: number) => `${fleetId}/${String(key).padStart(16, '0')}`;

/** Many aircraft in a store. Whatever it is asked to write over without having seen it, it keeps. */
export function createFleet(shelves: Shelves): Fleet {
  let count = 0;
  const stamp = () =>
    `${Date.now().toString(36)}.${(++count).toString(36)}.${Math.random().toString(36).slice(2)}`;
  const revisions = async (fleetId: string) =>
    (await shelves.list('revisions', `${fleetId}/`))
      .filter(isRevision)
      .sort((a, b) => b.atMs - a.atMs || b.key - a.key);
  /** A key that this tab has not given yet, so that two in one millisecond are two; a file's dates have no say in it. */
  let lastKey = 0;
  const nextKey = () => {
    lastKey = Math.max(lastKey + 1, Date.now());
    return lastKey;
  };
  const writeRevision = (revision: Omit<KeptRevision, 'key'>): Write => {
    const key = nextKey();
    return { table: 'revisions', key: revisionKey(revision.fleetId, key), value: { ...revision, key } };
  };
  const thinOut = async (fleetId: string) => {
    const all = await revisions(fleetId);
    const staying = new Set(thinned(all, Date.now()));
    const going = all.filter((revision) => !staying.has(revision));
    if (going.length === 0) return;
    await shelves.update('cards', fleetId, () =>
      going.map(({ key }) => ({ table: 'revisions', key: revisionKey(fleetId, key) })),
    );
  };
  const keepRevisions: Fleet['keepRevisions'] = async (fleetId, fresh) => {
    if (fresh.length === 0) return;
    await shelves.update('cards', fleetId, () => fresh.map(writeRevision));
    await thinOut(fleetId);
  };
  const changeRevision = (fleetId: string, key: number, change: (row: KeptRevision) => KeptRevision | null) =>
    shelves.update('revisions', revisionKey(fleetId, key), (row) =>
      isRevision(row)
        ? [{ table: 'revisions', key: revisionKey(fleetId, key), value: change(row) ?? undefined }]
        : [],
    );

  return {
    cards: async () => (await shelves.list('cards')).filter(isCard),
    read: async (fleetId) => {
      const row = await shelves.get('aircraft', fleetId);
      return isKept(row) ? row : null;
    },
    put: async ({ card, text, history, seen }) => {
      const next = stamp();
      await shelves.update('aircraft', card.id, (row) => {
        const stranger = isKept(row) && row.stamp !== seen && row.text !== text ? row : null;
        return [
          ...(stranger
            ? [
                writeRevision({
                  fleetId: card.id,
                  atMs: Date.now(),
                  name: null,
                  why: 'as the fleet had it',
                  text: stranger.text,
                }),
              ]
            : []),
          { table: 'aircraft', key: card.id, value: { text, history, stamp: next } },
          { table: 'cards', key: card.id, value: card },
        ];
      });
      return next;
    },
    change: (fleetId, change) =>
      shelves.update('cards', fleetId, (row) =>
        isCard(row) ? [{ table: 'cards', key: fleetId, value: change(row) }] : [],
      ),
    forget: async (fleetId) => {
      const old = await revisions(fleetId);
      await shelves.update('cards', fleetId, () => [
        { table: 'cards', key: fleetId },
        { table: 'aircraft', key: fleetId },
        ...old.map(({ key }): Write => ({ table: 'revisions', key: revisionKey(fleetId, key) })),
      ]);
    },
    revisions,
    keepRevision: (revision) => keepRevisions(revision.fleetId, [revision]),
    keepRevisions,
    renameRevision: (fleetId, key, name) => changeRevision(fleetId, key, (row) => ({ ...row, name })),
    forgetRevision: (fleetId, key) => changeRevision(fleetId, key, () => null),
  };
}

/** What a browser gives back is believed only as far as it has the right form. */
function has<K extends string>(row: unknown, kinds: Readonly<Record<K, string>>): row is Record<K, unknown> {
  if (typeof row !== 'object' || row === null) return false;
  return Object.entries<string>(kinds).every(([key, kind]) => typeof Reflect.get(row, key) === kind);
}

const isKept = (row: unknown): row is Kept => has(row, { text: 'string', stamp: 'string' });
const isCard = (row: unknown): row is FleetCard =>
  has(row, { id: 'string', name: 'string', changedAtMs: 'number', picture: 'object' });
const isRevision = (row: unknown): row is KeptRevision =>
  has(row, { fleetId: 'string', key: 'number', atMs: 'number', text: 'string', why: 'string' });
