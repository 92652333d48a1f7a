import { blankAircraft } from '../model/document/blank';
import { withoutDrawings } from '../model/document/traces';
import type { Aircraft } from '../model/document/types';
import { faultCount } from '../model/reading/fault';
import type { Fault } from '../model/reading/read';
import type { Bench } from '../store/bench';
import type { FilePickers } from './filePickers';
import type { KeptShelf } from './keptShelf';
import { type OpenedFile, openDropped, openFile } from './openFile';
import { chooseMesh, isMeshName, openMesh } from './openMesh';
import { openTable } from './openTable';
import { isPictureName, PICTURE_ENDINGS } from './pictureNames';
import { saveFile } from './saveFile';

/** An aircraft that comes with the bench; its document is fetched when it is asked for. */
export interface Demo {
  readonly id: string;
  readonly name: string;
  readonly lesson: string;
  load(): Promise<Aircraft>;
}

export type Opening =
  | { readonly ok: true }
  | { readonly ok: false; readonly cancelled: true }
  | { readonly ok: false; readonly fileName: string; readonly faults: readonly Fault[] };

/** Opening, saving and choosing, each of which says how it ended. What comes onto the bench can be undone. */
export function createFileMenu(bench: Bench, pickers: FilePickers, demos: readonly Demo[], shelf: KeptShelf) {
  const { notice, document } = bench;
  const put = (aircraft: Aircraft, label: string) => {
    bench.drag.cancel();
    document.replace(aircraft, label);
  };
  const done = (text: string) => notice.tell({ about: 'file', tone: 'done', text });
  const failed = (text: string) => notice.tell({ about: 'file', tone: 'bad', text });

  const taken = (opened: OpenedFile | null): Opening => {
    if (!opened) return { ok: false, cancelled: true };
    const { name, read } = opened;
    if (!read.ok) return { ok: false, fileName: name, faults: read.faults };
    put(read.aircraft, `Open ${name}`);
    notice.drop('file');
    return { ok: true };
  };
  const openBy = async (open: () => Promise<OpenedFile | null>): Promise<Opening> => {
    try {
      return taken(await open());
    } catch (error) {
      failed(`Not opened: ${reason(error)}. The aircraft on the bench has not changed.`);
      return { ok: false, cancelled: true };
    }
  };

  const openDemo = async (id: string): Promise<void> => {
    const demo = demos.find((offered) => offered.id === id);
    if (!demo) return;
    try {
      put(await demo.load(), `Choose ${demo.name}`);
      notice.drop('file');
    } catch {
      notice.tell({
        about: 'file',
        tone: 'bad',
        text: `${demo.name} could not be fetched: the server has stopped or is out of reach. The aircraft on the bench has not changed.`,
        actions: [{ label: 'Retry', run: () => void openDemo(id) }],
      });
    }
  };

  /** A mesh is looked at on the card before anything of it is taken. */
  const openMeshBy = async (choose: () => Promise<File | null>): Promise<void> => {
    try {
      const file = await choose();
      if (file) await openMesh(bench, file);
    } catch (error) {
      failed(`Not opened: ${reason(error)}. The aircraft on the bench has not changed.`);
    }
  };

  /** A picture lies under the elevation shown, and is no step until it is kept in the file. */
  const openPictureBy = async (choose: () => Promise<File | null>): Promise<void> => {
    try {
      const file = await choose();
      if (!file) return;
      const { openPicture } = await import('./openPicture');
      await openPicture(bench, file);
      notice.drop('file');
    } catch (error) {
      failed(`Not laid under: ${reason(error)}. What lay there has not changed.`);
    }
  };

  return {
    demos,
    openDemo,
    shelf,
    openTable: () => openTable(pickers),
    newAircraft: () => put(blankAircraft(), 'New, an empty bench'),
    openFile: () => openBy(() => openFile(pickers)),
    openPicture: () => openPictureBy(() => pickers.chooseFile(PICTURE_ENDINGS)),
    openMesh: () => openMeshBy(() => chooseMesh(pickers)),
    openDropped: (files: FileList) =>
      openBy(async () => {
        const first = files[0];
        if (first && files.length === 1 && isMeshName(first.name)) {
          await openMeshBy(async () => first);
          return null;
        }
        if (first && files.length === 1 && isPictureName(first.name)) {
          await openPictureBy(async () => first);
          return null;
        }
        if (!first) throw new Error('what was dropped is no file');
        if (files.length > 1) throw new Error(`${files.length} files were dropped, and the bench holds one`);
        return openDropped(first);
      }),
    /** Opens what a link to this page carries behind its #; a faulty one is told here, for no dialog was opened for it. */
    openLink: async (fragment: string) => {
      const opening = await openBy(async () => {
        const { readLink } = await import('./link/aircraftLink');
        return { name: 'a link', handle: null, read: readLink(fragment) };
      });
      if (opening.ok)
        done(
          `${document.current().name} came by a link and has a place of its own. Undo brings back what stood here before.`,
        );
      else if ('faults' in opening)
        failed(`${faultsInWords(opening.faults)} The aircraft on the bench has not changed.`);
      return opening;
    },
    /** The aircraft on the bench as a link to the page at an address. */
    makeLink: async (pageAddress: string) => {
      const { linkTo, LONGEST_LINK } = await import('./link/aircraftLink');
      const aircraft = withoutDrawings(document.api.getState().committed);
      return { ...linkTo(aircraft, pageAddress), longest: LONGEST_LINK };
    },
    saveBytes: (name: string, bytes: Uint8Array<ArrayBuffer>, type: string) =>
      pickers.download(name, bytes, type),
    saveText: (name: string, text: string, type: string) => pickers.download(name, text, type),
    saveFile: async () => {
      try {
        const saved = await saveFile(pickers, document.api.getState().committed);
        if (!saved) failed('Not saved: no file was chosen.');
        else if (saved.handle) done(`Saved as ${saved.name}.`);
        else done(`Saved as ${saved.name}, in the browser’s downloads.`);
      } catch (error) {
        failed(`Not saved: ${reason(error)}. Try another place, or free some room on the disk.`);
      }
    },
  };
}

const faultsInWords = ([first, ...more]: readonly Fault[]): string =>
  `Not opened: ${first?.sentence ?? 'nothing came.'}${more.length > 0 ? ` (and ${faultCount(more)} more)` : ''}`;

const reason = (error: unknown): string =>
  (error instanceof Error ? error.message : String(error)).trim().replace(/\.$/, '') || 'no reason was given';
