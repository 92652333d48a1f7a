import { isName, LONGEST_NAME, shownText } from '../document/names';
import type { Aircraft } from '../document/types';
import { writeAircraft } from '../document/write';
import { type Fault, fault, toldFault } from './fault';
import { LARGEST_FLEET } from './fileSize';
import { readJson } from './jsonText';
import { readAircraft } from './read';

export const FLEET_FORMAT = 'counterpoise fleet';
const FLEET_VERSION = 1;

/** An earlier state of an aircraft, with when it was kept (ms since 1970) and what it was called, if anything. */
export interface FleetFileRevision {
  readonly atMs: number;
  readonly name: string | null;
  readonly why: string;
  readonly aircraft: Aircraft;
}

export interface FleetFileEntry {
  /** Its place in the fleet that it was taken from. */
  readonly id: string;
  /** ms since 1970. */
  readonly changedAtMs: number;
  readonly aircraft: Aircraft;
  readonly revisions: readonly FleetFileRevision[];
}

export interface FleetFileRead {
  readonly entries: readonly FleetFileEntry[];
  /** Of what was left out; a sound file has none. */
  readonly faults: readonly Fault[];
}

/** A whole fleet as one text: every aircraft as its own file has it, its revisions with it. */
export function writeFleetFile(entries: readonly FleetFileEntry[]): string {
  const written = entries.map(({ aircraft, ...entry }) => {
    const head = JSON.stringify({ ...entry, changedAt: new Date(entry.changedAtMs).toISOString() });
    return `${head.slice(0, -1)},"aircraft":\n${writeAircraft(aircraft)}}`;
  });
  const head = JSON.stringify({ format: FLEET_FORMAT, version: FLEET_VERSION });
  return `${head.slice(0, -1)},"aircraft":[\n${written.join(',\n')}\n]}\n`;
}

/** Reads what `writeFleetFile` wrote. An aircraft or a revision that does not read is told and left out; the others come. */
export function readFleetFile(text: string): FleetFileRead {
  const read = readJson(text, LARGEST_FLEET);
  if (!read.ok) return { entries: [], faults: [read.fault] };
  const { json } = read;
  const head = member(json, 'format');
  if (head !== FLEET_FORMAT)
    return { entries: [], faults: [fault(json, ['format'], `"${FLEET_FORMAT}"`, shown(head))] };
  const version = member(json, 'version');
  if (version !== FLEET_VERSION)
    return { entries: [], faults: [fault(json, ['version'], `${FLEET_VERSION}`, shown(version))] };
  const list = member(json, 'aircraft');
  if (!Array.isArray(list))
    return { entries: [], faults: [fault(json, ['aircraft'], 'a list of aircraft', shown(list))] };
  const entries: FleetFileEntry[] = [];
  const faults: Fault[] = [];
  list.forEach((item: unknown, at) => {
    const entry = entryOf(json, item, at, faults);
    if (entry) entries.push(entry);
  });
  return { entries, faults };
}

function entryOf(json: unknown, item: unknown, at: number, faults: Fault[]): FleetFileEntry | null {
  const [id, changedAtMs] = [member(item, 'id'), member(item, 'changedAtMs')];
  const aircraft = documentIn(json, item, ['aircraft', at], faults);
  if (!aircraft) return null;
  const revisions = member(item, 'revisions');
  return {
    id: typeof id === 'string' && /^[0-9a-z]{1,40}$/.test(id) ? id : '',
    changedAtMs: dateOf(changedAtMs),
    aircraft,
    revisions: (Array.isArray(revisions) ? revisions : []).flatMap((row: unknown, n) => {
      const kept = documentIn(json, row, ['aircraft', at, 'revisions', n], faults);
      if (!kept) return [];
      const [name, why] = [member(row, 'name'), member(row, 'why')];
      return [
        {
          atMs: dateOf(member(row, 'atMs')),
          name: typeof name === 'string' && name !== '' ? nameOf(name) : null,
          why: typeof why === 'string' ? nameOf(why) : '',
          aircraft: kept,
        },
      ];
    }),
  };
}

/** A name as it can be shown: one that can be a name is the very same. */
const nameOf = (text: string): string => (isName(text) ? text : shownText(text).slice(0, LONGEST_NAME));

/** The document in a row of the file; null with its first fault told where it does not read. */
function documentIn(
  json: unknown,
  row: unknown,
  at: readonly (string | number)[],
  faults: Fault[],
): Aircraft | null {
  const read = readAircraft(member(row, 'aircraft'));
  if (read.ok) return read.aircraft;
  const [first] = read.faults;
  const more = read.faults.length > 1 ? ` (and ${read.faults.length - 1} more)` : '';
  const words = `${first?.sentence ?? 'it does not read.'}${more}`;
  faults.push(toldFault(json, [...at, 'aircraft'], words, first?.expected ?? '', first?.received ?? ''));
  return null;
}

/** The last moment that a date can be (ECMAScript, time values and time range), ms. */
const LAST_DATE_MS = 8.64e15;

const dateOf = (value: unknown): number =>
  typeof value === 'number' && Math.abs(value) <= LAST_DATE_MS ? value : 0;

const member = (value: unknown, key: string): unknown =>
  typeof value === 'object' && value !== null && Object.hasOwn(value, key)
    ? Reflect.get(value, key)
    : undefined;

const shown = (value: unknown): string =>
  value === undefined ? 'nothing' : (JSON.stringify(value)?.slice(0, 60) ?? 'nothing');
