import './beam.css';
import './stabilityMarks.css';
import { useAxis, useView } from '../../store/react';
import { useBenchValue } from '../Live';
import { later } from '../later';
import { GhostMarks } from './GhostMarks';
import { burns, type Line, lateralLine, rows, stationLine } from './lines';
import { MacScale } from './MacScale';
import { EstimatedZone, NeutralPoint } from './NeutralPoint';
import { Ruler } from './Ruler';
import { Weights } from './Weights';
import { Zone } from './Zone';

const Travel = later(
  () => import('./Travel'),
  (module) => module.Travel,
);

/** The aircraft as a beam on its fulcrum, and under it the travel of the CG on the same axis. */
export function Beam() {
  const front = useView((view) => view.view === 'front');
  const line = front ? lateralLine : stationLine;
  const widthPx = useAxis((axis) => axis.widthPx);
  const travels = useBenchValue(burns);
  const heightPx = travels ? rows.bottom : rows.bottomWithoutTravel;
  return (
    <div className="beam" data-testid="beam" style={{ height: heightPx }}>
      <Weights line={line} key={line.axis} over={<Over line={line} heightPx={heightPx} />}>
        <Zone line={line} heightPx={heightPx} />
        {!front && <EstimatedZone heightPx={heightPx} />}
        <Ruler line={line} />
        {!front && <MacScale />}
      </Weights>
      {travels && <Travel line={line} widthPx={widthPx} />}
    </div>
  );
}

function Over({ line, heightPx }: { readonly line: Line; readonly heightPx: number }) {
  return (
    <>
      {line.axis === 0 && <NeutralPoint heightPx={heightPx} />}
      <GhostMarks line={line} />
    </>
  );
}
