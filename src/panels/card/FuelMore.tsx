import { fuelDensity } from '../../model/airframe/tanks';
import type { Aircraft, Fuel } from '../../model/document/types';
import { formatNumber } from '../../model/units';
import { useCommitted } from '../../store/react';
import { Measure } from '../fields/Measure';
import { RowsTable } from '../fields/RowsTable';
import { Live } from '../Live';

interface FlowRow {
  readonly throttlePct: number;
  readonly mlPerMin: number;
}

/** Half way from the last point to full throttle. */
function anotherPoint({ flow }: Fuel, rows: readonly FlowRow[]): FlowRow {
  const all = [
    { throttlePct: 0, mlPerMin: flow.idleMlPerMin },
    ...rows,
    { throttlePct: 100, mlPerMin: flow.fullMlPerMin },
  ];
  const last = all.at(-2);
  const full = all.at(-1);
  if (!last || !full) return { throttlePct: 50, mlPerMin: 0 };
  return {
    throttlePct: Math.round((last.throttlePct + full.throttlePct) / 2),
    mlPerMin: Math.round((last.mlPerMin + full.mlPerMin) / 2),
  };
}

/** What fewer people know of their fuel: its temperature, how well it was weighed, its flow in between. */
export function FuelMore() {
  const fuel = useCommitted((aircraft) => aircraft.fuel);
  const kerosene = fuel?.kind === 'kerosene';
  const warmed = fuel?.temperatureC !== undefined;
  const change = (aircraft: Aircraft, fields: Partial<Fuel>): Aircraft => ({
    ...aircraft,
    fuel: aircraft.fuel && { ...aircraft.fuel, ...fields },
  });
  return (
    <details className="more">
      <summary>Temperature, ±, and flow in between</summary>
      {kerosene && (
        <>
          <Measure
            label="Temperature"
            quantity="number"
            suffix="°C"
            step="Change the temperature of the fuel"
            empty={{
              means: 'as weighed',
              write: (aircraft) => change(aircraft, { temperatureC: undefined }),
            }}
            read={({ fuel }) => fuel?.temperatureC ?? null}
            write={(aircraft, temperatureC) => change(aircraft, { temperatureC })}
          />
          <p className="hint">
            {warmed ? (
              <>
                The density above is at 15 °C; in the tanks it is{' '}
                <Live
                  read={({ document }) => {
                    const { fuel } = document.current();
                    return fuel ? formatNumber(fuelDensity(fuel), 4) : '–';
                  }}
                />{' '}
                g/ml.
              </>
            ) : (
              'With a temperature the density above counts as that at 15 °C.'
            )}
          </p>
        </>
      )}
      <Measure
        label="Density, ±"
        quantity="number"
        suffix="g/ml"
        step="Change how well the density is known"
        empty={{
          means: 'as usual',
          write: (aircraft) => change(aircraft, { plusMinusGPerMl: undefined }),
        }}
        read={({ fuel }) => fuel?.plusMinusGPerMl ?? null}
        write={(aircraft, plusMinusGPerMl) => change(aircraft, { plusMinusGPerMl })}
      />
      <RowsTable<FlowRow>
        title="Flow between idle and full"
        noun="point"
        least={0}
        columns={[
          { key: 'throttlePct', label: 'Throttle', quantity: 'ratio' },
          { key: 'mlPerMin', label: 'Flow per min', quantity: 'volume' },
        ]}
        read={({ fuel }) => fuel?.flow.table ?? []}
        write={(aircraft, table) =>
          aircraft.fuel ? change(aircraft, { flow: { ...aircraft.fuel.flow, table } }) : aircraft
        }
        another={(rows) => (fuel ? anotherPoint(fuel, rows) : { throttlePct: 50, mlPerMin: 0 })}
      />
    </details>
  );
}
