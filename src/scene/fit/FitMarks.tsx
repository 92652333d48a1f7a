import { type RefObject, useEffect } from 'react';
import { useFit, useView } from '../../store/react';
import { layerShown } from '../../store/viewStore';
import type { FitWords } from '../marks/stageWords';
import { BallastRooms } from './BallastRooms';
import { FitClash } from './FitClash';
import { FitDimension } from './FitDimension';
import { FitLeads } from './FitLeads';
import { FitRooms } from './FitRooms';
import { fitLabels } from './fitReadings';
import { KeepOut } from './KeepOut';
import { SupplyWires } from './SupplyWires';

interface FitMarksProps {
  /** Handed the words, which the stage puts beside those of others. */
  readonly words: RefObject<FitWords | null>;
}

/** All that the stage shows of fit: rooms and openings, leads, what the selected part feeds, the nearest distance, clashes, zones to keep out of. */
export default function FitMarks({ words }: FitMarksProps) {
  const editing = useFit((fit) => fit.roomsShown);
  const rooms = useView((view) => layerShown(view, 'rooms'));
  const leads = useView((view) => layerShown(view, 'leads'));
  const fit = useView((view) => layerShown(view, 'fit'));
  useEffect(() => {
    words.current = fitLabels;
    return () => {
      words.current = null;
    };
  }, [words]);
  return (
    <>
      {(rooms || editing) && <FitRooms />}
      {leads && <FitLeads />}
      {fit && <FitDimension />}
      <FitClash />
      <KeepOut />
      <SupplyWires />
      <BallastRooms />
    </>
  );
}
