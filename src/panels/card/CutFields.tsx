import type { Aircraft, Block } from '../../model/document/types';
import { useCommitted } from '../../store/react';
import { Tick } from '../fields/Choice';
import { Measure } from '../fields/Measure';
import { CutOuts } from '../fit/CutOuts';

interface CutFieldsProps {
  readonly id: string;
  readonly name: string;
  readonly read: (aircraft: Aircraft) => Block | undefined;
  readonly write: (aircraft: Aircraft, change: Partial<Block>) => Aircraft;
}

/** Whether parts may be let into a block, what must be left around them, and the pockets that they need now. */
export function CutFields({ id, name, read, write }: CutFieldsProps) {
  const cuttable = useCommitted((aircraft) => read(aircraft)?.cuttable === true);
  return (
    <>
      <Tick
        label="Parts may be let into it"
        step={`Say whether ${name} may be cut`}
        read={(aircraft) => read(aircraft)?.cuttable === true}
        write={(aircraft, on) => write(aircraft, { cuttable: on })}
      />
      {cuttable && (
        <>
          <Measure
            label="Wall left"
            quantity="length"
            step={`Change the least wall of ${name}`}
            empty={{
              means: 'as little as may be',
              write: (aircraft) => write(aircraft, { minimumWallMm: 0 }),
            }}
            read={(aircraft) => read(aircraft)?.minimumWallMm ?? null}
            write={(aircraft, minimumWallMm) => write(aircraft, { minimumWallMm })}
          />
          <div className="fit">
            <CutOuts id={id} />
          </div>
        </>
      )}
    </>
  );
}
