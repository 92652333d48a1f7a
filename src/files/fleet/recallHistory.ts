import type { Aircraft } from '../../model/document/types';
import { writeAircraft } from '../../model/document/write';
import { packLine, unpackLine } from '../../model/history/packing';
import { readAircraft } from '../../model/reading/read';
import { type Change, type DocumentState, type History, historyOf } from '../../store/documentStore';

/** The steps of the aircraft on the bench as a text; null where there are none. */
export function packHistory(state: DocumentState): string | null {
  const { past, future } = historyOf(state);
  return past.length + future.length === 0 ? null : packLine({ past, now: state.committed, future });
}

/** So many documents are read before the page gets its turn, for a person may be dragging something. */
const AT_ONCE = 8;

const breath = () => new Promise<void>((done) => setTimeout(done));

/**
 * The steps of an earlier visit, each document read as any file is. Steps beyond one that does not read are left out, for
 * they could not be reached. What was done after the history was last kept is one more step. Null for a text that is
 * not whole.
 */
export async function recallHistory(packed: string, current: Aircraft): Promise<History | null> {
  const line = unpackLine(packed);
  if (!line) return null;
  const last = readAircraft(line.now);
  if (!last.ok) return null;
  const newestFirst = [...line.past].reverse();
  const past = (await sound(newestFirst)).reverse();
  const goneOn = writeAircraft(last.aircraft) !== writeAircraft(current);
  if (goneOn) return { past: [...past, { label: LAST_EDITS, aircraft: last.aircraft }], future: [] };
  const future = (await sound([...line.future].reverse())).reverse();
  return { past, future };
}

const LAST_EDITS = 'The last edits before the page closed';

/** The changes up to the first that does not read. */
async function sound(
  changes: readonly { readonly label: string; readonly json: unknown }[],
): Promise<Change[]> {
  const read: Change[] = [];
  for (const { label, json } of changes) {
    if (read.length % AT_ONCE === AT_ONCE - 1) await breath();
    const result = readAircraft(json);
    if (!result.ok || typeof label !== 'string') break;
    read.push({ label, aircraft: result.aircraft });
  }
  return read;
}
