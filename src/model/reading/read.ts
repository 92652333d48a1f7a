import type { Aircraft } from '../document/types';
import { cappedFaults, type Fault, fault, shortened } from './fault';
import { crossFaults } from './faults';
import { readJson } from './jsonText';
import { migrate } from './migrations/migrate';
import { schemaFaults } from './schemaFaults';
import { misspeltKeys } from './unknownKeys';
import { variantFaults } from './variantFaults';

export type { Fault } from './fault';

/** What a file says, or what is wrong with it: the first hundred faults, the last of which may stand for more. */
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
 * order of keys included; nothing is filled in or rounded. A bad one gives its faults. Never throws: should a check
 * itself fail, that is reported as a fault of the file.
 */
export function readAircraft(json: unknown): ReadResult {
  try {
    return readDocument(json);
  } catch (error) {
    const reason = shortened(error instanceof Error ? error.message : String(error));
    return { ok: false, faults: [fault(null, [], UNCHECKED, `one that stops a check (${reason})`)] };
  }
}

/** What is expected in the fault that reports a check which itself failed, as none should. */
export const UNCHECKED = 'a file that can be checked';

function readDocument(json: unknown): ReadResult {
  const migrated = migrate(json);
  if (!migrated.ok) return { ok: false, faults: [migrated.fault] };
  const broken = schemaFaults(migrated.json);
  const first = [...broken, ...misspeltKeys(migrated.json), ...crossFaults(migrated.json, broken)];
  // Variants are aircraft made of this one, so they are looked at once it is sound itself.
  const faults = first.length > 0 ? first : variantFaults(migrated.json as Aircraft);
  return faults.length > 0
    ? { ok: false, faults: cappedFaults(faults) }
    : { ok: true, aircraft: migrated.json as Aircraft };
}
