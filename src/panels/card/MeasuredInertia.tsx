import { triangleInequalityFault } from '../../engine/mass/principal';
import type { Tensor } from '../../engine/mass/types';
import { partBody } from '../../model/airframe/bodies';
import type { Aircraft, Part } from '../../model/document/types';
import { useCommitted } from '../../store/react';
import { Measure } from '../fields/Measure';

/** kg·cm² in g·mm². */
const KG_CM2 = 1e5;

const moments = [
  { key: 'xx', label: 'Roll, x' },
  { key: 'yy', label: 'Pitch, y' },
  { key: 'zz', label: 'Yaw, z' },
] as const;

interface MeasuredInertiaProps {
  readonly name: string;
  readonly read: (aircraft: Aircraft) => Part | undefined;
  readonly write: (aircraft: Aircraft, change: Partial<Part>) => Aircraft;
}

/** The part's inertia from a swing test, in place of a uniform solid's; says so when no body can have it. */
export function MeasuredInertia({ name, read, write }: MeasuredInertiaProps) {
  const typed = useCommitted((aircraft) => read(aircraft)?.inertiaGmm2);
  const put = (aircraft: Aircraft, key: keyof Tensor, value: number): Aircraft => {
    const part = read(aircraft);
    if (!part) return aircraft;
    const uniform = partBody({ ...part, yawDeg: 0, pitchDeg: 0, rollDeg: 0 }).mass.inertiaAboutCgGmm2;
    return write(aircraft, { inertiaGmm2: { ...(part.inertiaGmm2 ?? uniform), [key]: value } });
  };
  const impossible = typed && triangleInequalityFault(typed) !== null;
  return (
    <details className="more">
      <summary>Inertia, as measured</summary>
      {moments.map(({ key, label }) => (
        <Measure
          key={key}
          label={label}
          quantity="number"
          suffix="kg·cm²"
          step={`Change the inertia of ${name}`}
          empty={{
            means: 'uniform',
            write: (aircraft) => write(aircraft, { inertiaGmm2: undefined }),
          }}
          read={(aircraft) => {
            const measured = read(aircraft)?.inertiaGmm2;
            return measured ? measured[key] / KG_CM2 : null;
          }}
          write={(aircraft, value) => put(aircraft, key, value * KG_CM2)}
        />
      ))}
      {impossible && (
        <p className="fault" role="alert">
          No body can have this: the largest principal moment is more than the other two together, or one is
          negative.
        </p>
      )}
      <p className="hint">About its own CG, along its own axes. Empty: a uniform solid of its shape.</p>
    </details>
  );
}
