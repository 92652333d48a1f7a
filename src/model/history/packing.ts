import type { Aircraft } from '../document/types';
import { textDigest } from './textDigest';

/** A step and the aircraft on its far side. */
interface Change {
  readonly label: string;
  readonly aircraft: Aircraft;
}

/** The steps of one aircraft with the aircraft that they lead to; the future's nearest step last. */
export interface Line {
  readonly past: readonly Change[];
  readonly now: Aircraft;
  readonly future: readonly Change[];
}

/** The most steps that are packed, and the most characters they may take: what lies farther back is left out. */
export const MOST_STEPS = 200;
export const MOST_CHARACTERS = 2_000_000;

/** A document in pieces: each member by its place in the list of pieces, a list of things member by member. */
type InPieces = Readonly<Record<string, number | readonly number[]>>;

interface Packed {
  readonly pieces: readonly unknown[];
  readonly past: readonly { readonly label: string; readonly at: InPieces }[];
  readonly now: InPieces;
  readonly future: readonly { readonly label: string; readonly at: InPieces }[];
}

/**
 * The steps as a text in which every thing that did not change stands once, with a mark by which a damaged text is
 * known. The oldest steps are left out where there are too many of them.
 */
export function packLine(line: Line): string {
  let { past } = line;
  const future = line.future.slice(-MOST_STEPS);
  past = past.slice(-MOST_STEPS);
  for (;;) {
    const text = JSON.stringify(inPieces({ ...line, past, future }));
    if (text.length <= MOST_CHARACTERS || past.length === 0) return `${textDigest(text)} ${text}`;
    past = past.slice(Math.ceil(past.length / 2));
  }
}

function inPieces({ past, now, future }: Line): Packed {
  const pieces: unknown[] = [];
  const places = new Map<unknown, number>();
  const byText = new Map<string, number>();
  const placeOf = (value: unknown): number => {
    const before = places.get(value);
    if (before !== undefined) return before;
    // Things that came from different texts are alike without being the same.
    const text = JSON.stringify(value);
    const place = byText.get(text) ?? pieces.push(value) - 1;
    places.set(value, place);
    byText.set(text, place);
    return place;
  };
  const cut = (aircraft: Aircraft): InPieces =>
    Object.fromEntries(
      Object.entries(aircraft).flatMap(([key, value]) =>
        value === undefined ? [] : [[key, Array.isArray(value) ? value.map(placeOf) : placeOf(value)]],
      ),
    );
  const steps = (changes: readonly Change[]) =>
    changes.map(({ label, aircraft }) => ({ label, at: cut(aircraft) }));
  return { past: steps(past), now: cut(now), future: steps(future), pieces };
}

/**
 * What `packLine` made, each thing that did not change being the very same one again; the documents are still to be
 * read as any file is. Null for a text that is not whole.
 */
export function unpackLine(text: string): UnreadLine | null {
  const space = text.indexOf(' ');
  const body = text.slice(space + 1);
  if (space < 0 || textDigest(body) !== text.slice(0, space)) return null;
  try {
    const { pieces, past, now, future } = JSON.parse(body) as Packed;
    const whole = (at: InPieces): unknown =>
      Object.fromEntries(
        Object.entries(at).map(([key, place]) => [
          key,
          typeof place === 'number' ? pieces[place] : place.map((each) => pieces[each]),
        ]),
      );
    const steps = (changes: Packed['past']) => changes.map(({ label, at }) => ({ label, json: whole(at) }));
    return { past: steps(past), now: whole(now), future: steps(future) };
  } catch {
    return null;
  }
}

interface UnreadChange {
  readonly label: string;
  readonly json: unknown;
}

interface UnreadLine {
  readonly past: readonly UnreadChange[];
  readonly now: unknown;
  readonly future: readonly UnreadChange[];
}
