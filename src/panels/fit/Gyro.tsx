import { updatePart } from '../../model/document/edit';
import type { Aircraft } from '../../model/document/types';
import { gyroFault, gyroPractice } from '../../model/fit/gyro';
import { formatNumber } from '../../model/units';
import { Tick } from '../fields/Choice';
import { Icon } from '../icons';
import { useBenchValue } from '../Live';
import { useReadings } from '../readings';

const partOf = ({ parts }: Aircraft, id: string) => parts.find((part) => part.id === id);

/** Whether a part senses rotation, and then whether it stands as it should. */
export function Gyro({ id, name }: { readonly id: string; readonly name: string }) {
  const say = useReadings();
  const words = useBenchValue(({ document, balance }) => {
    const part = partOf(document.current(), id);
    const fault = part && gyroFault(part, balance.get().cgMm);
    if (!fault) return '';
    const far = `${say.length(fault.fromCgMm)} from the CG, within ${say.length(gyroPractice.withinMm)} wanted`;
    const askew = `${formatNumber(fault.offSquareDeg, 1)}° off square to the axes`;
    return [fault.tooFar && far, fault.askew && askew].filter(Boolean).join('; ');
  });
  return (
    <>
      <Tick
        label="Senses rotation: a gyro or stabiliser"
        step={`Say whether ${name} is a gyro`}
        read={(aircraft) => partOf(aircraft, id)?.gyro === true}
        write={(aircraft, gyro) => updatePart(aircraft, id, { gyro })}
      />
      {words !== '' && (
        <p className="fit-note">
          <Icon name="warn" />
          <span>
            {words}. A gyro stands near the CG and square to the axes. <em>Common practice.</em>
          </span>
        </p>
      )}
    </>
  );
}
