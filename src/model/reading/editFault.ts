import { perObject } from '../../engine/memory/memory';
import type { Aircraft } from '../document/types';
import type { Fault } from './fault';
import { readAircraft } from './read';

/** What was wrong with an aircraft, worked out once: what an edit starts from is what the last one left. */
const faultsOf = perObject((aircraft: Aircraft): readonly Fault[] => {
  const read = readAircraft(aircraft);
  return read.ok ? [] : read.faults;
});

/** Why an edit cannot be, in a sentence: the first fault that was not there before. Null when it can. */
export function editFault(before: Aircraft, next: Aircraft): string | null {
  const after = faultsOf(next);
  if (after.length === 0) return null;
  const old = new Set(faultsOf(before).map(({ sentence }) => sentence));
  const fresh = after.find(({ sentence }) => !old.has(sentence));
  return fresh ? sentenceOf(fresh) : null;
}

/** A fault's sentence without the path into the file, which the place on the screen already stands for. */
function sentenceOf({ path, sentence }: Fault): string {
  const plain = sentence.startsWith(`${path}: `) ? sentence.slice(path.length + 2) : sentence;
  return plain.charAt(0).toUpperCase() + plain.slice(1);
}
