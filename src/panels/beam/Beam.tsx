import './beam.css';
import './stabilityMarks.css';
import { useAxis, useView } from '../../store/react';
import { useBenchValue } from '../Live';
import { later } from '../later';
import { GhostMarks } from './GhostMarks';
import { burns, lateralLine, stationLine } from './lines';
import { MacScale } from './MacScale';
import { MeasureFrom } from './MeasureFrom';
import { EstimatedZone, NeutralPoint } from './NeutralPoint';
import { Ruler } from './Ruler';
import { rowsOf } from './rows';
import { stabilityShown } from './stabilityLayer';
import { Weights } from './Weights';
import { Zone } from './Zone';

const Travel = later(
  () => import('./Travel'),
  (module) => module.Travel,
  { place: 'The CG travel' },
);

/** The aircraft as a beam on its fulcrum, and under it the travel of the CG. */
export function Beam() {
  const front = useView((view) => view.view === 'front');
  const line = front ? lateralLine : stationLine;
  const widthPx = useAxis((axis) => axis.widthPx);
  const rows = useView(rowsOf);
  const stability = useView(stabilityShown) && !front;
  const travels = useBenchValue(burns);
  return (
    <div
      className="beam"
      data-testid="beam"
      style={{ height: rows.strip + (travels ? rows.travelHeight : 0) }}
    >
      <Weights
        line={line}
        key={line.axis}
        over={
          <>
            {stability && <NeutralPoint heightPx={rows.strip} />}
            <GhostMarks line={line} />
          </>
        }
      >
        <Zone line={line} heightPx={rows.strip} />
        {stability && <EstimatedZone heightPx={rows.strip} />}
        <Ruler line={line} />
        {stability && <MacScale />}
      </Weights>
      {!front && <MeasureFrom topPx={rows.ruler} />}
      {travels && widthPx > 0 && <Travel line={line} widthPx={widthPx} />}
    </div>
  );
}
