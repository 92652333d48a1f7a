import { useMemo } from 'react';
import { shownText } from '../../model/document/names';
import type { From } from '../../model/words/workingSheet';
import { useCommitted, useView } from '../../store/react';
import { useReadings } from '../readings';

/** The reference point that stations are read from, with its name. */
export function useFrom(): From {
  const { fromMm } = useReadings();
  const id = useView((view) => view.measureFromId);
  const name = useCommitted(({ referencePoints }) => referencePoints.find((each) => each.id === id)?.name);
  return useMemo(() => ({ name: name ? `“${shownText(name)}”` : 'the datum', mm: fromMm }), [name, fromMm]);
}
