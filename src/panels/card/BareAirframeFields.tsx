import { bareAirframeDifference } from '../../model/airframe/bodies';
import { shownText } from '../../model/document/names';
import type { Aircraft, BareAirframe } from '../../model/document/types';
import { LEAST_SHOWN_MM } from '../../model/units';
import { useCommitted } from '../../store/react';
import { Choice } from '../fields/Choice';
import { EditButton } from '../fields/EditButton';
import { Measure } from '../fields/Measure';
import { type Readings, useReadings } from '../readings';
import { PlusMinusFields } from './PlusMinusFields';
import { WeighedStart } from './WeighedStart';

const uses: readonly { readonly value: BareAirframe['use']; readonly label: string }[] = [
  { value: 'compare', label: 'Only compare' },
  { value: 'correct', label: 'Correct the shapes' },
  { value: 'replace', label: 'Replace the shapes' },
];

/** By how much the scales and the shapes differ, in words. */
function differenceWords(aircraft: Aircraft, say: Readings): string {
  const difference = bareAirframeDifference(aircraft);
  if (!difference) return '';
  const { massG, stationMm } = difference;
  const mass =
    Math.abs(massG) < 0.5
      ? 'It weighs what the shapes say'
      : `The scales say ${say.mass(Math.abs(massG))} ${massG > 0 ? 'more' : 'less'} than the shapes`;
  if (stationMm === null) return `${mass}.`;
  const cg =
    Math.abs(stationMm) < LEAST_SHOWN_MM
      ? 'and the CG agrees'
      : `and the CG ${say.lengthFine(Math.abs(stationMm))} further ${stationMm > 0 ? 'aft' : 'forward'}`;
  return `${mass}, ${cg}.`;
}

/** The bare airframe as it was weighed, and what to make of it. */
export function BareAirframeFields() {
  const say = useReadings();
  const weighed = useCommitted(({ bareAirframe }) => bareAirframe !== null);
  const contains = useCommitted(({ bareAirframe }) => shownText(bareAirframe?.contains ?? ''));
  const words = useCommitted((aircraft) => differenceWords(aircraft, say));
  const change = (aircraft: Aircraft, fields: Partial<BareAirframe>): Aircraft => ({
    ...aircraft,
    bareAirframe: aircraft.bareAirframe && { ...aircraft.bareAirframe, ...fields },
  });
  if (!weighed) {
    return (
      <>
        <p className="hint">Not weighed yet; the masses of the structure stand for it.</p>
        <WeighedStart />
      </>
    );
  }
  return (
    <>
      <Measure
        label="Mass"
        quantity="mass"
        step="Change the weighed mass"
        read={({ bareAirframe }) => bareAirframe?.massG}
        write={(aircraft, massG) => change(aircraft, { massG })}
      />
      <Measure
        label="Station"
        quantity="length"
        from={say.fromMm}
        step="Change the weighed CG"
        read={({ bareAirframe }) => bareAirframe?.stationMm}
        write={(aircraft, stationMm) => change(aircraft, { stationMm })}
      />
      <Measure
        label="Buttline"
        quantity="length"
        step="Change the weighed CG"
        read={({ bareAirframe }) => bareAirframe?.buttlineMm}
        write={(aircraft, buttlineMm) => change(aircraft, { buttlineMm })}
      />
      <Measure
        label="Waterline"
        quantity="length"
        step="Change the weighed CG"
        empty={{
          means: 'as the shapes',
          write: (aircraft) => {
            if (!aircraft.bareAirframe) return aircraft;
            const { waterlineMm: _weighed, ...rest } = aircraft.bareAirframe;
            return { ...aircraft, bareAirframe: rest };
          },
        }}
        read={({ bareAirframe }) => bareAirframe?.waterlineMm ?? null}
        write={(aircraft, waterlineMm) => change(aircraft, { waterlineMm })}
      />
      <PlusMinusFields name="the bare airframe" read={({ bareAirframe }) => bareAirframe} write={change} />
      <Choice
        label="Use it to"
        step="Change what the weighed airframe is used for"
        options={uses}
        read={({ bareAirframe }) => bareAirframe?.use ?? 'compare'}
        write={(aircraft, use) => change(aircraft, { use: use as BareAirframe['use'] })}
      />
      <p className="hint">{words}</p>
      {contains && <p className="hint">The weighed figure contains {contains}.</p>}
      <EditButton
        step="Forget the weighed airframe"
        edit={(aircraft) => ({ ...aircraft, bareAirframe: null })}
      >
        Forget what the scales said
      </EditButton>
    </>
  );
}
