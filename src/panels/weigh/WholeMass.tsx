import type { Aircraft } from '../../model/document/types';
import { Measure } from '../fields/Measure';
import { readingField } from './readingField';

interface WholeMassProps {
  readonly id: string;
  readonly by: 'stand' | 'lines' | 'tilt' | 'swing';
  /** Where nothing comes out without it. */
  readonly needed?: boolean;
}

/** The whole aircraft on one scale, by itself. */
export function WholeMass({ id, by, needed = false }: WholeMassProps) {
  const massG = readingField(id, by, 'massG');
  return (
    <>
      <Measure
        label="Whole, weighed"
        quantity="mass"
        step="Weigh the whole"
        empty={{
          means: needed ? 'weigh it first' : 'not weighed',
          write: (aircraft: Aircraft) => massG.write(aircraft, null),
        }}
        {...massG}
      />
      <Measure
        label="Whole, ±"
        quantity="mass"
        step="Change how well the whole was weighed"
        {...readingField(id, by, 'massPlusMinusG')}
      />
    </>
  );
}
