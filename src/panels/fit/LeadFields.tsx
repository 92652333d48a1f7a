import { leadState } from '../../model/airframe/leads';
import type { Aircraft, Lead } from '../../model/document/types';
import { useCommitted } from '../../store/react';
import { Choice } from '../fields/Choice';
import { Measure } from '../fields/Measure';
import { RowsTable } from '../fields/RowsTable';
import { TextEntry } from '../fields/TextEntry';
import { useBenchValue } from '../Live';
import { useReadings } from '../readings';
import { changedAt } from './EntryList';
import { itemOptions } from './itemOptions';
import { slackWords } from './LeadsAt';

interface Waypoint {
  readonly stationMm: number;
  readonly buttlineMm: number;
  readonly waterlineMm: number;
}

const change =
  (at: number, fields: Partial<Lead>) =>
  (aircraft: Aircraft): Aircraft => ({
    ...aircraft,
    leads: changedAt(aircraft.leads, at, fields),
  });

/** Leaves a figure out: a lead without a length is made to measure, without a route it runs straight. */
const without =
  (at: number, key: 'lengthMm' | 'route') =>
  (aircraft: Aircraft): Aircraft => ({
    ...aircraft,
    leads: (aircraft.leads ?? []).map((lead, index) => {
      if (index !== at) return lead;
      const { [key]: _, ...rest } = lead;
      return rest;
    }),
  });

/** The figures of one lead, by its place in the list. */
export function LeadFields({ at, named = true }: { readonly at: number; readonly named?: boolean }) {
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const options = itemOptions(aircraft);
  const name = aircraft.leads?.[at]?.name ?? '';
  const step = `Change ${name}`;
  const words = useBenchValue(({ document }) => {
    const lead = document.current().leads?.[at];
    const state = lead && leadState(document.current(), lead);
    if (!state) return '';
    const reach = `${say.length(state.neededMm)} needed; ${slackWords(state, say)}.`;
    return state.strays ? `${reach} ${state.strays}` : reach;
  });
  const routes = [
    { value: 'straight', label: 'straight' },
    { value: 'wall', label: 'along the hull’s wall' },
  ];
  const ends = [
    { key: 'from', label: 'From' },
    { key: 'to', label: 'To' },
  ] as const;
  return (
    <>
      {named && (
        <TextEntry
          label="Name"
          step={`Rename ${name}`}
          read={({ leads }) => leads?.[at]?.name}
          write={(now, text) => change(at, { name: text })(now)}
        />
      )}
      {ends.map(({ key, label }) => (
        <Choice
          key={key}
          label={label}
          step={step}
          options={options}
          read={({ leads }) => leads?.[at]?.[key] ?? ''}
          write={(now, value) => change(at, { [key]: value })(now)}
        />
      ))}
      <Choice
        label="Runs"
        step={step}
        options={routes}
        read={({ leads }) => leads?.[at]?.route ?? 'straight'}
        write={(now, route) => (route === 'wall' ? change(at, { route })(now) : without(at, 'route')(now))}
      />
      <Measure
        label="Length owned"
        quantity="length"
        step={step}
        empty={{ means: 'made to measure', write: without(at, 'lengthMm') }}
        read={({ leads }) => leads?.[at]?.lengthMm ?? null}
        write={(now, lengthMm) => change(at, { lengthMm })(now)}
      />
      <Measure
        label="Mass per m"
        quantity="mass"
        step={step}
        read={({ leads }) => leads?.[at]?.massGPerM}
        write={(now, massGPerM) => change(at, { massGPerM })(now)}
      />
      <p className="hint">{words}</p>
      <RowsTable<Waypoint>
        title={`${name} runs by these points, from the datum`}
        noun="point"
        least={0}
        columns={[
          { key: 'stationMm', label: 'Station', quantity: 'length' },
          { key: 'buttlineMm', label: 'Buttline', quantity: 'length' },
          { key: 'waterlineMm', label: 'Waterline', quantity: 'length' },
        ]}
        read={({ leads }) =>
          (leads?.[at]?.waypointsMm ?? []).map(([stationMm, buttlineMm, waterlineMm]) => ({
            stationMm,
            buttlineMm,
            waterlineMm,
          }))
        }
        write={(now, rows) =>
          change(at, {
            waypointsMm: rows.map(({ stationMm, buttlineMm, waterlineMm }) => [
              stationMm,
              buttlineMm,
              waterlineMm,
            ]),
          })(now)
        }
        another={(rows) => rows.at(-1) ?? middleOf(aircraft, at)}
      />
    </>
  );
}

/** Half way between the ends of a lead, to the millimetre. */
function middleOf(aircraft: Aircraft, at: number): Waypoint {
  const lead = aircraft.leads?.[at];
  const path = lead && leadState(aircraft, lead)?.pathMm;
  const [from, to] = [path?.[0], path?.at(-1)];
  const half = (axis: 0 | 1 | 2) => Math.round(((from?.[axis] ?? 0) + (to?.[axis] ?? 0)) / 2);
  return { stationMm: half(0), buttlineMm: half(1), waterlineMm: half(2) };
}
