import { useState } from 'react';
import { freeId } from '../../model/document/ids';
import type { AircraftKind, ReferencePoint } from '../../model/document/types';
import { useBench, useCommitted, useView } from '../../store/react';
import { Choice } from '../fields/Choice';
import { Measure } from '../fields/Measure';
import { RowsTable } from '../fields/RowsTable';
import { TextEntry } from '../fields/TextEntry';
import { RoomsPlace } from '../fit/RoomsPlace';
import { Fold } from '../fold/Fold';
import { later } from '../later';
import { Practice } from '../Practice';
import { useReadings } from '../readings';
import { EstimatePlace } from '../stability/EstimatePlace';
import { BandPlace } from './BandPlace';
import { BareAirframeFields } from './BareAirframeFields';
import { FuelFields } from './FuelFields';
import { HowSure } from './HowSure';
import { Inertia } from './Inertia';
import {
  airframeSummary,
  bandSummary,
  fuelSummary,
  inertiaSummary,
  neutralPointSummary,
  roomsSummary,
  sourcesSummary,
  sureSummary,
} from './summaries';

const OnScales = later(
  () => import('../sources/OnScales'),
  (module) => module.OnScales,
  { place: 'What the mass rests on' },
);
const SensitivityDialog = later(
  () => import('../sums/SensitivityDialog'),
  (module) => module.SensitivityDialog,
  { place: 'The table of what moves the CG' },
);

const kinds: readonly { readonly value: AircraftKind; readonly label: string }[] = [
  { value: 'petrol', label: 'Petrol' },
  { value: 'turbine', label: 'Turbine' },
  { value: 'electric', label: 'Electric' },
  { value: 'glider', label: 'Glider' },
];

interface PointRow {
  readonly name: string;
  readonly stationMm: number;
  readonly buttlineMm: number;
  readonly waterlineMm: number;
}

const asRow = ({ name, positionMm: [stationMm, buttlineMm, waterlineMm] }: ReferencePoint): PointRow => ({
  name,
  stationMm,
  buttlineMm,
  waterlineMm,
});

/** The aircraft's own figures. */
export function AircraftCard() {
  const bench = useBench();
  const say = useReadings();
  const units = useView((view) => view.units);
  const kind = useCommitted((aircraft) => aircraft.kind);
  const points = useCommitted((aircraft) => aircraft.referencePoints.length);
  const [asking, setAsking] = useState(false);
  const burns = useCommitted((aircraft) => aircraft.fuel?.use === 'burn');
  return (
    <div className="card">
      <header>
        <h2>Aircraft</h2>
      </header>
      <Fold id="band" title="Limits" summary={bandSummary(say)}>
        <BandPlace />
        <Measure
          label="Lateral, up to"
          quantity="length"
          step="Change the lateral tolerance"
          read={(aircraft) => aircraft.lateralToleranceMm}
          write={(aircraft, lateralToleranceMm) => ({ ...aircraft, lateralToleranceMm })}
        />
        <Practice of={burns ? 'fuelState' : 'noseHeavy'} />
        <button type="button" className="button" aria-haspopup="dialog" onClick={() => setAsking(true)}>
          What moves the CG
        </button>
        {asking && <SensitivityDialog onClose={() => setAsking(false)} />}
      </Fold>
      <Fold id="sure" title="Certainty" summary={sureSummary(say)}>
        <HowSure />
      </Fold>
      <Fold id="sources" title="Sources" summary={sourcesSummary}>
        <OnScales />
      </Fold>
      <Fold id="neutralPoint" title="Neutral point" summary={neutralPointSummary(say)}>
        <EstimatePlace />
      </Fold>
      <Fold id="airframe" title="Airframe" summary={airframeSummary(say)}>
        <BareAirframeFields />
      </Fold>
      <Fold id="fuel" title="Fuel" summary={fuelSummary(units)}>
        <FuelFields />
      </Fold>
      <Fold id="rooms" title="Rooms" summary={roomsSummary}>
        <RoomsPlace />
      </Fold>
      <Fold id="inertia" title="Inertia" summary={inertiaSummary}>
        <Inertia />
      </Fold>
      <Fold
        id="identity"
        title="Identity"
        summary={() => kinds.find(({ value }) => value === kind)?.label ?? ''}
      >
        <TextEntry
          label="Name"
          step="Rename the aircraft"
          read={(aircraft) => aircraft.name}
          write={(aircraft, name) => ({ ...aircraft, name })}
        />
        <Choice
          label="Kind"
          step="Change the kind of aircraft"
          options={kinds}
          read={(aircraft) => aircraft.kind}
          write={(aircraft, kind) => ({ ...aircraft, kind: kind as AircraftKind })}
        />
        <TextEntry
          label="Datum"
          step="Change what the datum is"
          read={(aircraft) => aircraft.datum}
          write={(aircraft, datum) => ({ ...aircraft, datum })}
        />
        <Measure
          label="Drag step"
          quantity="length"
          step="Change the step that drags catch on"
          read={(aircraft) => aircraft.gridMm}
          write={(aircraft, gridMm) => ({ ...aircraft, gridMm })}
        />
        <TextEntry
          long
          label="Notes"
          step="Change the notes"
          read={(aircraft) => aircraft.notes}
          write={(aircraft, notes) => ({ ...aircraft, notes })}
        />
      </Fold>
      <Fold id="points" title="Points" summary={() => String(points)}>
        <RowsTable<PointRow>
          title="Reference points, from the datum"
          noun="point"
          least={0}
          columns={[
            { key: 'name', label: 'Name', quantity: 'text' },
            { key: 'stationMm', label: 'Station', quantity: 'length' },
            { key: 'buttlineMm', label: 'Buttline', quantity: 'length' },
            { key: 'waterlineMm', label: 'Waterline', quantity: 'length' },
          ]}
          read={(aircraft) => aircraft.referencePoints.map(asRow)}
          write={(aircraft, rows) => ({
            ...aircraft,
            referencePoints: keepIds(aircraft.referencePoints, rows, freeId(aircraft, 'point')),
          })}
          another={(rows) => ({
            name: `Point ${rows.length + 1}`,
            stationMm: Math.round(bench.balance.get().cgMm?.[0] ?? 0),
            buttlineMm: 0,
            waterlineMm: 0,
          })}
        />
      </Fold>
    </div>
  );
}

/**
 * Rows back into points. Edited rows keep their place's id; when one was taken out, the ids follow the
 * rows that stayed as they were.
 */
function keepIds(
  points: readonly ReferencePoint[],
  rows: readonly PointRow[],
  newId: string,
): ReferencePoint[] {
  const left = [...points];
  return rows.map((row, at) => {
    const same = left.findIndex((point) => JSON.stringify(asRow(point)) === JSON.stringify(row));
    const from =
      same >= 0 ? same : rows.length === points.length ? left.indexOf(points[at] as ReferencePoint) : -1;
    const [point] = from >= 0 ? left.splice(from, 1) : [];
    const { name, stationMm, buttlineMm, waterlineMm } = row;
    return { ...point, id: point?.id ?? newId, name, positionMm: [stationMm, buttlineMm, waterlineMm] };
  });
}
