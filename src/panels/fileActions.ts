import type { Piece } from '../store/piece';
import type { FleetActions } from './fleetActions';

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

/** What the panels ask of the files, handed in by the composition root. */
export interface FileActions {
  openFile(): Promise<OpenResult>;
  /** Opens what was dropped on the page: one file. */
  openDropped(files: DataTransfer['files']): Promise<OpenResult>;
  /** The aircraft on the bench as a link to the page at an address. */
  makeLink(pageAddress: string): Promise<MadeLink>;
  /** Opens a mesh file, which then is looked at on the card; ends once it was chosen, or was not. */
  openMesh(): Promise<void>;
  saveFile(): void | Promise<void>;
  /** Gives a text to the person as a file of its own; `type` is its media type. */
  saveText(name: string, text: string, type: string): void;
  newAircraft(): void;
  openDemo(id: string): void | Promise<void>;
  readonly demos: readonly DemoAircraft[];
  /** The fleet, which is opened after the first paint. */
  readonly fleet: Piece<FleetActions>;
}
