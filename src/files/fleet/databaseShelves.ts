import { type IDBPDatabase, openDB } from 'idb';
import type { Shelves, Table } from './shelves';

const TABLES: readonly Table[] = ['cards', 'aircraft', 'revisions'];
const VERSION = 1;

interface DatabaseEvents {
  /** The browser has closed the database, or another tab needs it in a newer form. */
  gone(sentence: string): void;
}

/** The fleet's tables in the browser's own database. Rejects where the browser does not let it be opened. */
export async function databaseShelves(name: string, { gone }: DatabaseEvents): Promise<Shelves> {
  if (typeof indexedDB === 'undefined') throw new Error('it has no database');
  const database: IDBPDatabase = await openDB(name, VERSION, {
    upgrade: (fresh) => {
      for (const table of TABLES) if (!fresh.objectStoreNames.contains(table)) fresh.createObjectStore(table);
    },
    blocking: () => {
      database.close();
      gone('Another tab has a newer version of the bench. Reload this one to go on with the fleet.');
    },
    terminated: () => gone('The browser has closed its store. Reload the page to go on with the fleet.'),
  });
  const beginning = (prefix: string) => (prefix ? IDBKeyRange.bound(prefix, `${prefix}\uffff`) : undefined);
  return {
    get: (table, key) => database.get(table, key),
    list: (table, prefix = '') => database.getAll(table, beginning(prefix)),
    update: async (table, key, follows) => {
      const transaction = database.transaction([...TABLES], 'readwrite', { durability: 'strict' });
      // A transaction that fails rejects here too, and would be an error of the page if nobody listened.
      const done = transaction.done;
      done.catch(() => {});
      const writes = follows(await transaction.objectStore(table).get(key));
      for (const write of writes) {
        const rows = transaction.objectStore(write.table);
        void (write.value === undefined ? rows.delete(write.key) : rows.put(write.value, write.key)).catch(
          () => {},
        );
      }
      await done;
    },
  };
}
