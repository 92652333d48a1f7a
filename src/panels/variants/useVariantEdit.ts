import { useCallback } from 'react';
import type { Aircraft } from '../../model/document/types';
import { editFault } from '../../model/reading/editFault';
import { useBench } from '../../store/react';

/** Commits an edit of the variants themselves as one step, or says in a sentence why it cannot be. */
export function useVariantEdit(): (step: string, edit: (aircraft: Aircraft) => Aircraft) => string | null {
  const { document, drag } = useBench();
  return useCallback(
    (step, edit) => {
      drag.cancel();
      const before = document.api.getState().committed;
      const next = edit(before);
      const fault = next === before ? null : editFault(before, next);
      if (fault === null) document.commitVariants(step, next);
      return fault;
    },
    [document, drag],
  );
}
