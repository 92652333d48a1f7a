import { useState } from 'react';
import { elementBodies } from '../../model/airframe/bodies';
import type { Aircraft, MassSource, StructurePiece } from '../../model/document/types';
import { useCommitted } from '../../store/react';
import { Choice } from '../fields/Choice';
import { Measure } from '../fields/Measure';
import { useReadings } from '../readings';

type Massive = Exclude<StructurePiece, { kind: 'leg' }>;

interface MassSourceFieldsProps {
  readonly name: string;
  readonly paired: boolean;
  readonly read: (aircraft: Aircraft) => Massive | undefined;
  readonly write: (aircraft: Aircraft, mass: MassSource) => Aircraft;
}

const sources = [
  { value: 'weighed', label: 'Weighed' },
  { value: 'skin', label: 'Skin, by area' },
  { value: 'foam', label: 'Solid foam' },
];

/** What is usual for a source that is worked out, to be typed over. */
const estimatedBy = (by: 'skin' | 'foam'): MassSource =>
  by === 'skin' ? { by, gPerM2: 400 } : { by, gPerMl: 0.03 };

/** What it comes to by its dimensions, of a pair the right one, g. */
function estimateG(piece: Massive): number {
  const pieces = elementBodies(piece).filter(({ side }) => side !== 'left');
  return pieces.reduce((sum, { mass }) => sum + mass.massG, 0);
}

/** Where a piece's mass comes from, and the figures for it. */
export function MassSourceFields({ name, paired, read, write }: MassSourceFieldsProps) {
  const by = useCommitted((aircraft) => read(aircraft)?.mass.by);
  const mass = (aircraft: Aircraft) => read(aircraft)?.mass;
  const say = useReadings();
  /** The scales were chosen, but what they said is not typed yet: no computed figure stands there for it. */
  const [asked, setAsked] = useState(false);
  const estimatedG = useCommitted((aircraft) => {
    const piece = read(aircraft);
    return piece ? estimateG(piece) : 0;
  });
  const step = `Change the mass of ${name}`;
  const weighedAs = (aircraft: Aircraft) => {
    const now = mass(aircraft);
    return now?.by === 'weighed' ? now : null;
  };
  return (
    <>
      <Choice
        label="Mass by"
        step={`Change where the mass of ${name} comes from`}
        options={sources}
        read={(aircraft) => (asked ? 'weighed' : (mass(aircraft)?.by ?? 'weighed'))}
        write={(aircraft, to) => {
          setAsked(to === 'weighed');
          const isEstimate = to === 'skin' || to === 'foam';
          return isEstimate && mass(aircraft)?.by !== to ? write(aircraft, estimatedBy(to)) : aircraft;
        }}
      />
      {asked && by !== 'weighed' && (
        <>
          <Measure
            label={paired ? 'Right' : 'Mass'}
            quantity="mass"
            step={step}
            empty={{ means: 'not weighed yet', write: (aircraft) => aircraft }}
            read={() => null}
            write={(aircraft, massG) => write(aircraft, { by: 'weighed', massG })}
          />
          <p className="hint">Until that is typed, the estimate counts: {say.mass(estimatedG)}.</p>
        </>
      )}
      {by === 'weighed' && (
        <>
          <Measure
            label={paired ? 'Right' : 'Mass'}
            quantity="mass"
            step={step}
            read={(aircraft) => weighedAs(aircraft)?.massG}
            write={(aircraft, massG) => {
              const now = weighedAs(aircraft);
              return now ? write(aircraft, { ...now, massG }) : aircraft;
            }}
          />
          {paired && (
            <Measure
              label="Left"
              quantity="mass"
              step={step}
              empty={{
                means: 'as the right',
                write: (aircraft) => {
                  const now = weighedAs(aircraft);
                  if (!now) return aircraft;
                  const { leftMassG: _own, ...rest } = now;
                  return write(aircraft, rest);
                },
              }}
              read={(aircraft) => weighedAs(aircraft)?.leftMassG ?? null}
              write={(aircraft, leftMassG) => {
                const now = weighedAs(aircraft);
                return now ? write(aircraft, { ...now, leftMassG }) : aircraft;
              }}
            />
          )}
          <Choice
            label="Spread"
            step={`Change how the mass of ${name} is spread`}
            options={[
              { value: '', label: 'As usual for its kind' },
              { value: 'solid', label: 'Through the solid' },
              { value: 'skin', label: 'Over the skin' },
            ]}
            read={(aircraft) => weighedAs(aircraft)?.spread ?? ''}
            write={(aircraft, to) => {
              const now = weighedAs(aircraft);
              if (!now) return aircraft;
              const { spread: _was, ...rest } = now;
              return write(aircraft, to === 'solid' || to === 'skin' ? { ...rest, spread: to } : rest);
            }}
          />
        </>
      )}
      {!asked && by === 'skin' && (
        <Measure
          label="Areal density"
          quantity="number"
          suffix="g/m²"
          step={step}
          read={(aircraft) => {
            const now = mass(aircraft);
            return now?.by === 'skin' ? now.gPerM2 : null;
          }}
          write={(aircraft, gPerM2) => write(aircraft, { by: 'skin', gPerM2 })}
        />
      )}
      {!asked && by === 'foam' && (
        <Measure
          label="Density"
          quantity="number"
          suffix="g/ml"
          step={step}
          read={(aircraft) => {
            const now = mass(aircraft);
            return now?.by === 'foam' ? now.gPerMl : null;
          }}
          write={(aircraft, gPerMl) => write(aircraft, { by: 'foam', gPerMl })}
        />
      )}
    </>
  );
}
