import { freeId } from '../../model/document/ids';
import type { Aircraft, BallastSpotItem } from '../../model/document/types';
import { usualSpots } from '../../model/place/ballastPlaces';
import { RowsTable } from '../fields/RowsTable';
import { useReadings } from '../readings';

/** A spot as a row of figures; stations from where they are read. */
interface SpotRow {
  readonly id: string;
  readonly name: string;
  readonly stationMm: number;
  readonly buttlineMm: number;
  readonly waterlineMm: number;
  readonly stepG: number;
  readonly mostG: number;
}

const columns = [
  { key: 'name', label: 'Spot', quantity: 'text' },
  { key: 'stepG', label: 'Step', quantity: 'mass' },
  { key: 'mostG', label: 'Most', quantity: 'mass' },
  { key: 'stationMm', label: 'Station', quantity: 'length' },
  { key: 'buttlineMm', label: 'Buttline', quantity: 'length' },
  { key: 'waterlineMm', label: 'Waterline', quantity: 'length' },
] as const;

/** Where ballast may go, in what steps and how much of it; the usual spots until any is changed. */
export function Spots() {
  const { fromMm } = useReadings();
  const row = ({ id, name, positionMm: [x, y, z], stepG, mostG }: BallastSpotItem): SpotRow => ({
    id,
    name,
    stationMm: x - fromMm,
    buttlineMm: y,
    waterlineMm: z,
    stepG,
    mostG,
  });
  const spot = ({
    id,
    name,
    stationMm,
    buttlineMm,
    waterlineMm,
    stepG,
    mostG,
  }: SpotRow): BallastSpotItem => ({
    id,
    name,
    positionMm: [stationMm + fromMm, buttlineMm, waterlineMm],
    stepG,
    mostG,
  });
  const spots = (aircraft: Aircraft) => aircraft.ballastSpots ?? usualSpots(aircraft);
  return (
    <RowsTable<SpotRow>
      title="Ballast spots"
      noun="spot"
      columns={columns}
      least={0}
      read={(aircraft) => spots(aircraft).map(row)}
      write={(aircraft, rows) => ({
        ...aircraft,
        ballastSpots: rows.map((row) => spot({ ...row, id: row.id || freeId(aircraft, 'spot') })),
      })}
      another={(rows) => ({
        ...(rows.at(-1) ?? { stationMm: 0, buttlineMm: 0, waterlineMm: 0, stepG: 1, mostG: 500 }),
        id: '',
        name: `Spot ${rows.length + 1}`,
      })}
    />
  );
}
