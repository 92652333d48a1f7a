import { stationToPctMac } from '../../engine/wing/planform';
import type { Aircraft, TargetBand } from '../../model/document/types';
import { bandStations, surfacePlanform, wingPlanform } from '../../model/stability/band';
import { useCommitted } from '../../store/react';
import { Choice } from '../fields/Choice';
import { Measure } from '../fields/Measure';
import { useReadings } from '../readings';

const largestWing = ({ structure }: Aircraft) =>
  structure
    .filter((piece) => piece.kind === 'surface')
    .sort((a, b) => surfacePlanform(b).areaMm2 - surfacePlanform(a).areaMm2)[0];

/** The same band stated the other way; a fresh one stands at a quarter of the MAC. */
function bandAs(aircraft: Aircraft, by: string): TargetBand | null {
  if (by === 'none') return null;
  const mac = wingPlanform(aircraft);
  const now = bandStations(aircraft);
  if (by === 'mac') {
    const wing = largestWing(aircraft);
    if (!wing || !mac) return aircraft.targetBand;
    const pct = (mm: number) => Math.round(stationToPctMac(mac, mm) * 10) / 10;
    return {
      by,
      surfaceId: wing.id,
      forwardPct: now ? pct(now.forwardMm) : 22,
      aftPct: now ? pct(now.aftMm) : 30,
    };
  }
  const round = (mm: number) => Math.round(mm * 10) / 10;
  const [forwardMm, aftMm] = now
    ? [now.forwardMm, now.aftMm]
    : mac
      ? [mac.lemacMm + 0.22 * mac.macMm, mac.lemacMm + 0.3 * mac.macMm]
      : [200, 220];
  return { by: 'station', forwardMm: round(forwardMm), aftMm: round(aftMm) };
}

/** Where the CG must stay: by stations or by the mean aerodynamic chord. */
export function BandFields() {
  const { fromMm } = useReadings();
  const by = useCommitted(({ targetBand }) => targetBand?.by ?? 'none');
  const surfaces = useCommitted(({ structure }) =>
    structure.flatMap((piece) => (piece.kind === 'surface' ? [`${piece.id}\t${piece.name}`] : [])).join('\n'),
  );
  const change = (aircraft: Aircraft, fields: Partial<TargetBand>): Aircraft => ({
    ...aircraft,
    targetBand: aircraft.targetBand && ({ ...aircraft.targetBand, ...fields } as TargetBand),
  });
  const limit = (of: 'forward' | 'aft') => {
    const label = of === 'forward' ? 'Forward limit' : 'Aft limit';
    const step = `Change the ${label.toLowerCase()}`;
    return by === 'station' ? (
      <Measure
        label={label}
        quantity="length"
        from={fromMm}
        step={step}
        read={({ targetBand }) => (targetBand?.by === 'station' ? targetBand[`${of}Mm`] : null)}
        write={(aircraft, value) => change(aircraft, { [`${of}Mm`]: value })}
      />
    ) : (
      <Measure
        label={label}
        quantity="ratio"
        step={step}
        read={({ targetBand }) => (targetBand?.by === 'mac' ? targetBand[`${of}Pct`] : null)}
        write={(aircraft, value) => change(aircraft, { [`${of}Pct`]: value })}
      />
    );
  };
  return (
    <>
      <Choice
        label="Stated"
        step="Change how the band is stated"
        options={[
          { value: 'station', label: 'By stations' },
          ...(surfaces ? [{ value: 'mac', label: 'In % MAC' }] : []),
          { value: 'none', label: 'Not at all' },
        ]}
        read={({ targetBand }) => targetBand?.by ?? 'none'}
        write={(aircraft, to) => ({ ...aircraft, targetBand: bandAs(aircraft, to) })}
      />
      {by === 'mac' && (
        <Choice
          label="MAC of"
          step="Change the surface the band is read on"
          options={surfaces.split('\n').flatMap((line) => {
            const [value, label] = line.split('\t');
            return value && label ? [{ value, label }] : [];
          })}
          read={({ targetBand }) => (targetBand?.by === 'mac' ? targetBand.surfaceId : '')}
          write={(aircraft, surfaceId) => change(aircraft, { surfaceId })}
        />
      )}
      {by !== 'none' && (
        <>
          {limit('forward')}
          {limit('aft')}
        </>
      )}
    </>
  );
}
