import type { ShelfPart } from '../model/airframe/shelf';
import type { Piece } from '../store/piece';
import type { FleetActions } from './fleetActions';
import type { LessonActions } from './lessonActions';

/** One thing wrong with a file: where, what was expected there and what came. */
export interface ReadingFault {
  readonly path: string;
  readonly expected: string;
  readonly received: string;
  /** The whole of it. */
  readonly sentence?: string;
  /** How many faults it stands for; one when left out. */
  readonly standsFor?: number;
}

/** An aircraft that comes with the bench, and what it is there to teach. */
export interface DemoAircraft {
  readonly id: string;
  readonly name: string;
  readonly lesson: string;
}

/** How an opening ended; `cancelled` when the person thought better of it. */
export type OpenResult =
  | { readonly ok: true }
  | { readonly ok: false; readonly cancelled: true }
  | { readonly ok: false; readonly fileName: string; readonly faults: readonly ReadingFault[] };

/** An aircraft as a link, and the same in the two pieces that a QR code holds most tightly. */
export interface MadeLink {
  readonly address: string;
  readonly codeFront: string;
  readonly codeDigits: string;
  /** The longest that browsers carry, characters. */
  readonly longest: number;
}

/** How the opening of a table ended; `cancelled` when the person thought better of it. */
export type TableOpened =
  | { readonly ok: true; readonly name: string; readonly text: string }
  | { readonly ok: false; readonly cancelled: true }
  | { readonly ok: false; readonly sentence: string };

/** A person's own things on the shelf. */
export interface OwnShelf {
  /** All that is kept, and what of it could not be read, in a sentence. */
  read(): { readonly parts: readonly ShelfPart[]; readonly fault: string | null };
  /** Null when it is kept, else why not. */
  keep(part: ShelfPart): string | null;
  /** Null when it is gone, else why not. */
  remove(name: string): string | null;
}

/** What the panels ask of the files, handed in by the composition root. */
export interface FileActions {
  openFile(): Promise<OpenResult>;
  /** Opens what was dropped on the page: one file. */
  openDropped(files: DataTransfer['files']): Promise<OpenResult>;
  /** The aircraft on the bench as a link to the page at an address. */
  makeLink(pageAddress: string): Promise<MadeLink>;
  /** Opens a mesh file, which then is looked at on the card; ends once it was chosen, or was not. */
  openMesh(): Promise<void>;
  /** Lays a picture under the elevation shown; ends once it lies there, or was refused. */
  openPicture(): Promise<void>;
  saveFile(): void | Promise<void>;
  /** Gives a text to the person as a file of its own; `type` is its media type. */
  saveText(name: string, text: string, type: string): void;
  /** A table of parts as text. */
  openTable(): Promise<TableOpened>;
  /** A person's own things on the shelf, kept in this browser. */
  readonly shelf: OwnShelf;
  /** The same of bytes. */
  saveBytes(name: string, bytes: Uint8Array<ArrayBuffer>, type: string): void;
  newAircraft(): void;
  openDemo(id: string): void | Promise<void>;
  readonly demos: readonly DemoAircraft[];
  /** The fleet, which is opened after the first paint. */
  readonly fleet: Piece<FleetActions>;
  readonly lessons: Piece<LessonActions>;
}
