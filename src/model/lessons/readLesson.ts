import { cappedFaults, type Fault, fault, inWords, shortened, valueAt } from '../reading/fault';
import { readJson } from '../reading/jsonText';
import { readAircraft, UNCHECKED } from '../reading/read';
import { faultsBySchema } from '../reading/schemaFaults';
import { LESSON_FORMAT, LESSON_VERSION, lesson } from './schema/lesson';
import type { Lesson, LessonFile } from './types';

/** What a lesson's file says, or what is wrong with it. */
export type LessonRead =
  | { readonly ok: true; readonly lesson: Lesson }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/** Reads a lesson's text. Broken JSON gives one fault with its line and column. */
export function parseLesson(text: string): LessonRead {
  const read = readJson(text);
  return read.ok ? readLesson(read.json) : { ok: false, faults: [read.fault] };
}

/**
 * Reads a lesson with its aircraft. It is sound as a file then; whether it is a good lesson, `lintLesson` says. Never throws.
 */
export function readLesson(json: unknown): LessonRead {
  try {
    return readDocument(json);
  } catch (error) {
    const reason = shortened(error instanceof Error ? error.message : String(error));
    return { ok: false, faults: [fault(null, [], UNCHECKED, `one that stops a check (${reason})`)] };
  }
}

function readDocument(json: unknown): LessonRead {
  const other = otherFormat(json);
  if (other) return { ok: false, faults: [other] };
  const main = aircraftAt(json, ['aircraft']);
  const second =
    valueAt(json, ['check', 'aircraft']) === undefined ? null : aircraftAt(json, ['check', 'aircraft']);
  const faults = [...faultsBySchema(lesson, json), ...main.faults, ...(second?.faults ?? [])];
  if (faults.length > 0 || !main.aircraft) return { ok: false, faults: cappedFaults(faults) };
  const file = json as LessonFile;
  const { aircraft: _, ...check } = file.check;
  const wholeCheck = second?.aircraft ? { ...check, aircraft: second.aircraft } : check;
  return { ok: true, lesson: { ...file, aircraft: main.aircraft, check: wholeCheck } };
}

/** That this is no lesson, or one of a later version; then nothing else of it is looked at. */
function otherFormat(json: unknown): Fault | null {
  const [format, version] = [valueAt(json, ['format']), valueAt(json, ['version'])];
  if (format !== LESSON_FORMAT) return fault(json, ['format'], `"${LESSON_FORMAT}"`, inWords(format));
  if (typeof version === 'number' && version > LESSON_VERSION) {
    return fault(json, ['version'], `${LESSON_VERSION} at most: a later bench wrote this`, inWords(version));
  }
  return null;
}

/** The aircraft at a place of the file, with all faults of an aircraft file under that place; none where the schema tells. */
function aircraftAt(json: unknown, at: readonly string[]) {
  const value = valueAt(json, at);
  if (typeof value !== 'object' || value === null) return { aircraft: null, faults: [] };
  const read = readAircraft(value);
  if (read.ok) return { aircraft: read.aircraft, faults: [] };
  const where = at.join(' › ');
  const faults = read.faults.map((each) => ({
    ...each,
    path: `${where} › ${each.path}`,
    at: [...at, ...each.at],
    sentence: `${where} › ${each.sentence}`,
  }));
  return { aircraft: null, faults };
}
