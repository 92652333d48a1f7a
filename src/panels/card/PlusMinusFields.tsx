import type { Aircraft } from '../../model/document/types';
import { Measure } from '../fields/Measure';

interface Stated {
  readonly plusMinusG?: number | undefined;
  readonly plusMinusMm?: number | undefined;
}

interface PlusMinusFieldsProps {
  readonly name: string;
  readonly read: (aircraft: Aircraft) => Stated | null | undefined;
  readonly write: (aircraft: Aircraft, change: Stated) => Aircraft;
}

/** How well an item was weighed and its CG found; empty means the usual. Each ± holds 95 % of the cases. */
export function PlusMinusFields({ name, read, write }: PlusMinusFieldsProps) {
  return (
    <>
      <Measure
        label="Mass, ±"
        quantity="mass"
        step={`Change how well ${name} was weighed`}
        empty={{ means: 'as usual', write: (aircraft) => write(aircraft, { plusMinusG: undefined }) }}
        read={(aircraft) => read(aircraft)?.plusMinusG ?? null}
        write={(aircraft, plusMinusG) => write(aircraft, { plusMinusG })}
      />
      <Measure
        label="Place, ±"
        quantity="length"
        step={`Change how well the place of ${name} is known`}
        empty={{ means: 'as usual', write: (aircraft) => write(aircraft, { plusMinusMm: undefined }) }}
        read={(aircraft) => read(aircraft)?.plusMinusMm ?? null}
        write={(aircraft, plusMinusMm) => write(aircraft, { plusMinusMm })}
      />
    </>
  );
}
