import { useCallback } from 'react';
import type { Aircraft } from '../../model/document/types';
import type { Fault } from '../../model/reading/fault';
import { readAircraft } from '../../model/reading/read';
import { useBench } from '../../store/react';

/** Commits one step, or says in a sentence why the aircraft cannot be so and changes nothing. */
export type Edit = (step: string, edit: (aircraft: Aircraft) => Aircraft) => string | null;

const faultsOf = (aircraft: Aircraft): readonly Fault[] => {
  const read = readAircraft(aircraft);
  return read.ok ? [] : read.faults;
};

/** A fault's sentence without the path into the file, which the field already stands for. */
function sentenceOf({ path, sentence }: Fault): string {
  const plain = sentence.startsWith(`${path}: `) ? sentence.slice(path.length + 2) : sentence;
  return plain.charAt(0).toUpperCase() + plain.slice(1);
}

export function useEdit(): Edit {
  const { document } = useBench();
  return useCallback(
    (step, edit) => {
      const before = document.api.getState().committed;
      const next = edit(before);
      if (next === before) return null;
      const known = new Set(faultsOf(before).map(({ sentence }) => sentence));
      const fresh = faultsOf(next).find(({ sentence }) => !known.has(sentence));
      if (fresh) return sentenceOf(fresh);
      document.commit(step, next);
      return null;
    },
    [document],
  );
}
