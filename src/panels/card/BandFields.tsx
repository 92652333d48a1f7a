import type { Aircraft, TargetBand } from '../../model/document/types';
import { withBandBy } from '../../model/stability/freshBand';
import { useBench, useCommitted, useSteadyList } from '../../store/react';
import { Choice } from '../fields/Choice';
import { Measure } from '../fields/Measure';
import { useReadings } from '../readings';
import { BandStatedFor } from './BandStatedFor';

/** Where the CG must stay: by stations or by the mean aerodynamic chord. */
export function BandFields() {
  const { fromMm } = useReadings();
  const { stability } = useBench();
  const by = useCommitted(({ targetBand }) => targetBand?.by ?? 'none');
  const surfaces = useCommitted(
    useSteadyList(({ structure }: Aircraft) =>
      structure.flatMap(({ kind, id, name }) => (kind === 'surface' ? [{ value: id, label: name }] : [])),
    ),
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
        term="band"
        quantity="length"
        from={fromMm}
        step={step}
        read={({ targetBand }) => (targetBand?.by === 'station' ? targetBand[`${of}Mm`] : null)}
        write={(aircraft, value) => change(aircraft, { [`${of}Mm`]: value })}
      />
    ) : (
      <Measure
        label={label}
        term="band"
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
          ...(surfaces.length > 0 ? [{ value: 'mac', label: 'In % MAC' }] : []),
          { value: 'none', label: 'Not at all' },
        ]}
        read={({ targetBand }) => targetBand?.by ?? 'none'}
        write={(aircraft, to) => {
          const { estimate, fresh } = stability.get();
          return withBandBy(aircraft, to as TargetBand['by'] | 'none', fresh ? estimate : null);
        }}
      />
      {by === 'mac' && (
        <Choice
          label="MAC of"
          term="mac"
          step="Change the surface the band is read on"
          options={surfaces}
          read={({ targetBand }) => (targetBand?.by === 'mac' ? targetBand.surfaceId : '')}
          write={(aircraft, surfaceId) => change(aircraft, { surfaceId })}
        />
      )}
      {by !== 'none' && (
        <>
          {limit('forward')}
          {limit('aft')}
          <BandStatedFor />
        </>
      )}
    </>
  );
}
