import { sizeFault } from '../model/reading/fileSize';
import type { FilePickers } from './filePickers';

/** How the opening of a table ended; `cancelled` when the person thought better of it. */
export type TableOpened =
  | { readonly ok: true; readonly name: string; readonly text: string }
  | { readonly ok: false; readonly cancelled: true }
  | { readonly ok: false; readonly sentence: string };

/** Lets a person choose a table as text, on this machine only. It must be UTF-8; another encoding is told, never guessed at. */
export async function openTable(pickers: FilePickers): Promise<TableOpened> {
  const file = await pickers.chooseFile('.csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain');
  if (!file) return { ok: false, cancelled: true };
  const large = sizeFault(file.size);
  if (large) return { ok: false, sentence: large.sentence };
  const { textOf } = await import('../model/reading/fileText');
  const read = textOf(new Uint8Array(await file.arrayBuffer()));
  return read.ok
    ? { ok: true, name: file.name, text: read.text }
    : { ok: false, sentence: read.fault.sentence };
}
