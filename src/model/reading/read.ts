import type { Aircraft } from '../document/types';
import type { Fault } from './fault';
import { crossFaults } from './faults';
import { readJson } from './jsonText';
import { migrate } from './migrations/migrate';
import { schemaFaults } from './schemaFaults';

export type { Fault } from './fault';

export type ReadResult =
  | { readonly ok: true; readonly aircraft: Aircraft }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** Reads a file's text. Broken JSON gives one fault with its line and column. */
export function parseAircraft(text: string): ReadResult {
  const read = readJson(text);
  return read.ok ? readAircraft(read.json) : { ok: false, faults: [read.fault] };
}

/**
 * Reads a document of this or an older version. A sound one comes back as it is, unknown keys and the
 * order of keys included; nothing is filled in or rounded. A bad one gives every fault in it.
 */
export function readAircraft(json: unknown): ReadResult {
  const migrated = migrate(json);
  if (!migrated.ok) return { ok: false, faults: [migrated.fault] };
  const broken = schemaFaults(migrated.json);
  const faults = [...broken, ...crossFaults(migrated.json, broken)];
  return faults.length > 0 ? { ok: false, faults } : { ok: true, aircraft: migrated.json as Aircraft };
}
