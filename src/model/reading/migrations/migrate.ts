import { VERSION } from '../../document/schema/aircraft';
import { type Fault, fault, inWords, toldFault } from '../fault';
import { type Document, type Migration, migrations } from './steps';

export type Migrated =
  | { readonly ok: true; readonly json: unknown }
  | { readonly ok: false; readonly fault: Fault };

/**
 * Brings a document of an older version up to `current`; the input is left as it was. A document from a
 * later version is refused, as nobody here can know what it means.
 */
export function migrate(
  json: unknown,
  steps: readonly Migration[] = migrations,
  current: number = VERSION,
): Migrated {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) {
    return { ok: false, fault: fault(json, [], 'an aircraft', inWords(json)) };
  }
  let document = json as Document;
  const { version } = document;
  const readable = current === 1 ? '1' : `1 to ${current}`;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return { ok: false, fault: fault(json, ['version'], `a version, ${readable}`, inWords(version)) };
  }
  if (version > current) {
    const sentence = `the file was saved by a later version of the bench (${version}); this one reads version ${readable}.`;
    return {
      ok: false,
      fault: toldFault(json, ['version'], sentence, `version ${readable}`, String(version)),
    };
  }
  for (let from = version; from < current; from += 1) {
    const migration = steps.find((step) => step.from === from);
    if (!migration) throw new Error(`There is no migration from version ${from} to ${from + 1}.`);
    document = { ...migration.step(document), version: from + 1 };
  }
  return { ok: true, json: document };
}
