import { writeAircraft } from '../model/document/write';
import { readAircraft } from '../model/reading/read';

/**
 * The text of an aircraft's file as a file of today's version, by the same steps that the bench takes when it opens one.
 * Throws with what is wrong with it, a line each.
 */
export function movedText(text: string): string {
  const read = readAircraft(JSON.parse(text));
  if (!read.ok) throw new Error(read.faults.map(({ sentence }) => sentence).join('\n'));
  return writeAircraft(read.aircraft);
}
