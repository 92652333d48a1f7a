import { fileStem } from '../model/document/fileStem';
import type { Aircraft } from '../model/document/types';
import { writeAircraft } from '../model/document/write';
import { FILE_TYPES, type FileHandle, type FilePickers } from './filePickers';
import { isCancelled } from './openFile';

export interface SavedFile {
  readonly name: string;
  readonly handle: FileHandle | null;
}

/**
 * Saves an aircraft as a file: over `handle` when there is one, else where the person chooses, else as a
 * download. Null when they thought better of it. Throws what the browser throws when the disk refuses.
 */
export async function saveFile(
  pickers: FilePickers,
  aircraft: Aircraft,
  handle: FileHandle | null = null,
): Promise<SavedFile | null> {
  const text = writeAircraft(aircraft);
  const suggestedName = fileName(aircraft);
  if (!handle && !pickers.showSaveFilePicker) {
    pickers.download(suggestedName, text);
    return { name: suggestedName, handle: null };
  }
  try {
    const target = handle ?? (await pickers.showSaveFilePicker?.({ types: FILE_TYPES, suggestedName }));
    if (!target) return null;
    const file = await target.createWritable();
    await file.write(text);
    await file.close();
    return { name: target.name, handle: target };
  } catch (error) {
    if (isCancelled(error)) return null;
    throw error;
  }
}

/** "Sand Martin" as `sand-martin.json`. */
export const fileName = ({ name }: Aircraft): string => `${fileStem(name)}.json`;
