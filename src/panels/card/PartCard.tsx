import { updatePart } from '../../model/edit';
import { roles } from '../../model/schema/aircraft';
import type { Aircraft, Part, Role } from '../../model/types';
import { Choice, Tick } from '../fields/Choice';
import { Measure } from '../fields/Measure';
import { TextEntry } from '../fields/TextEntry';
import { roleLooks } from '../roleLooks';
import { Clashes } from './Clashes';
import { PlaceFields } from './PlaceFields';
import { Room } from './Room';
import { ShapeFields } from './ShapeFields';
import { Working } from './Working';

const roleOptions = roles.map((role) => ({ value: role as string, label: roleLooks[role].label }));

/** The figures of a part. */
export function PartCard({ id, name }: { readonly id: string; readonly name: string }) {
  const read = (aircraft: Aircraft): Part | undefined => aircraft.parts.find((part) => part.id === id);
  const change = (fields: Partial<Part>) => (aircraft: Aircraft) => updatePart(aircraft, id, fields);
  return (
    <>
      <section>
        <Choice
          label="Role"
          step={`Change the role of ${name}`}
          options={roleOptions}
          read={(aircraft) => read(aircraft)?.role ?? 'other'}
          write={(aircraft, role) => change({ role: role as Role })(aircraft)}
        />
        <Measure
          label="Mass"
          quantity="mass"
          step={`Change the mass of ${name}`}
          read={(aircraft) => read(aircraft)?.massG}
          write={(aircraft, massG) => change({ massG })(aircraft)}
        />
        <Measure
          label="Give or take"
          quantity="mass"
          step={`Change how well ${name} was weighed`}
          empty={{ means: 'not said', write: (aircraft) => withoutPlusMinus(aircraft, id) }}
          read={(aircraft) => read(aircraft)?.plusMinusG ?? null}
          write={(aircraft, plusMinusG) => change({ plusMinusG })(aircraft)}
        />
        <PlaceFields name={name} read={read} write={(aircraft, place) => change(place)(aircraft)} />
      </section>
      <Room id={id} />
      <Clashes id={id} />
      <Working id={id} />
      <section>
        <h3>Size</h3>
        <ShapeFields
          name={name}
          read={(aircraft) => read(aircraft)?.shape}
          write={(aircraft, shape) => change({ shape })(aircraft)}
        />
      </section>
      <section>
        <Tick
          label="Locked where it is"
          step={`Lock or unlock ${name}`}
          read={(aircraft) => read(aircraft)?.locked === true}
          write={(aircraft, locked) => change({ locked })(aircraft)}
        />
        <Tick
          label="Typical figures, not weighed"
          step={`Say whether ${name} was weighed`}
          read={(aircraft) => read(aircraft)?.typical === true}
          write={(aircraft, typical) => change({ typical })(aircraft)}
        />
        <TextEntry
          long
          label="Notes"
          step={`Change the notes on ${name}`}
          read={(aircraft) => read(aircraft)?.notes}
          write={(aircraft, notes) => change({ notes })(aircraft)}
        />
      </section>
    </>
  );
}

function withoutPlusMinus(aircraft: Aircraft, id: string): Aircraft {
  return {
    ...aircraft,
    parts: aircraft.parts.map((part) => {
      if (part.id !== id) return part;
      const { plusMinusG: _said, ...rest } = part;
      return rest;
    }),
  };
}
