import { sizeFault } from '../model/reading/fileSize';
import type { ReadResult } from '../model/reading/read';
import type { FileHandle, FilePickers } from './filePickers';
import { FILE_TYPES } from './filePickers';

export interface OpenedFile {
  readonly name: string;
  /** Where to save it again without asking; null where the browser cannot. */
  readonly handle: FileHandle | null;
  readonly read: ReadResult;
}

/** Lets a person choose a file and reads it, on this machine only. Null when they thought better of it. */
export async function openFile(pickers: FilePickers): Promise<OpenedFile | null> {
  if (pickers.showOpenFilePicker) {
    try {
      const [handle] = await pickers.showOpenFilePicker({ types: FILE_TYPES, multiple: false });
      return handle ? opened(await handle.getFile(), handle) : null;
    } catch (error) {
      if (isCancelled(error)) return null;
      throw error;
    }
  }
  const file = await pickers.chooseFile('.json,application/json');
  return file ? opened(file, null) : null;
}

/** Reads a file that was dropped on the bench. */
export const openDropped = (file: File): Promise<OpenedFile> => opened(file, null);

/** A file that is too large is refused without being read. */
async function opened(file: File, handle: FileHandle | null): Promise<OpenedFile> {
  const large = sizeFault(file.size);
  if (large) return { name: file.name, handle, read: { ok: false, faults: [large] } };
  const [{ readFileBytes }, bytes] = await Promise.all([
    import('../model/reading/fileText'),
    file.arrayBuffer(),
  ]);
  return { name: file.name, handle, read: readFileBytes(new Uint8Array(bytes)) };
}

/** Whether a picker was closed without a choice. */
export const isCancelled = (error: unknown): boolean => error instanceof Error && error.name === 'AbortError';
