import { useCallback } from 'react';
import type { Aircraft } from '../../model/document/types';
import { editFault } from '../../model/reading/editFault';
import { useBench } from '../../store/react';

/** The aircraft after an edit, or a sentence that says why there is none. */
export type Edited = Aircraft | string;

/** Commits one step, or says in a sentence why the aircraft cannot be so and changes nothing. */
export type Edit = (step: string, edit: (aircraft: Aircraft) => Edited) => string | null;

export function useEdit(): Edit {
  const { document } = useBench();
  return useCallback(
    (step, edit) => {
      const before = document.api.getState().committed;
      const next = edit(before);
      if (typeof next === 'string') return next;
      if (next === before) return null;
      const fault = editFault(before, next);
      if (fault === null) document.commit(step, next);
      return fault;
    },
    [document],
  );
}
