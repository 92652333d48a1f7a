import { updatePart } from '../../model/document/edit';
import { roles } from '../../model/document/schema/aircraft';
import type { Aircraft, Part, Role } from '../../model/document/types';
import { useCommitted } from '../../store/react';
import { Choice, Tick } from '../fields/Choice';
import { Measure } from '../fields/Measure';
import { TextEntry } from '../fields/TextEntry';
import { Fold } from '../fold/Fold';
import { Practice } from '../Practice';
import { useReadings } from '../readings';
import { roleLooks } from '../roleLooks';
import { KeepOnShelf } from './KeepOnShelf';
import { MeasuredInertia } from './MeasuredInertia';
import { PairFields } from './PairFields';
import { PlaceFields } from './PlaceFields';
import { PlusMinusFields } from './PlusMinusFields';
import { ShapeFields } from './ShapeFields';
import { MassSource, SizeSource, sourceOfTyped } from './SourceFields';
import { SwitchTick } from './SwitchTick';
import { sizeSummary } from './summaries';
import { WhereItSits } from './WhereItSits';

const roleOptions = roles.map((role) => ({ value: role as string, label: roleLooks[role].label }));

/** The figures of a part. */
export function PartCard({ id, name }: { readonly id: string; readonly name: string }) {
  const read = (aircraft: Aircraft): Part | undefined => aircraft.parts.find((part) => part.id === id);
  const change = (fields: Partial<Part>) => (aircraft: Aircraft) => updatePart(aircraft, id, fields);
  const say = useReadings();
  const role = useCommitted((aircraft) => read(aircraft)?.role);
  const practice = role === 'ballast' ? 'ballast' : role === 'energy' ? 'packs' : null;
  return (
    <>
      <section>
        <Measure
          label="Mass"
          quantity="mass"
          step={`Change the mass of ${name}`}
          read={(aircraft) => read(aircraft)?.massG}
          write={(aircraft, massG) => change({ massG, ...sourceOfTyped(read(aircraft)) })(aircraft)}
        />
        <MassSource name={name} id={id} read={read} write={(aircraft, fields) => change(fields)(aircraft)} />
        <PlaceFields
          name={name}
          itemId={id}
          read={read}
          write={(aircraft, place) => change(place)(aircraft)}
        />
        <PairFields id={id} name={name} />
      </section>
      <WhereItSits id={id} />
      <Fold id="size" title="Size" summary={sizeSummary(id, say)}>
        <ShapeFields
          name={name}
          read={(aircraft) => read(aircraft)?.shape}
          write={(aircraft, shape) => change({ shape })(aircraft)}
        />
        <SizeSource name={name} read={read} write={(aircraft, fields) => change(fields)(aircraft)} />
        <MeasuredInertia name={name} read={read} write={(aircraft, fields) => change(fields)(aircraft)} />
      </Fold>
      <Fold id="about" title="What it is" summary={() => (role ? roleLooks[role].label : '')}>
        <Choice
          label="Role"
          step={`Change the role of ${name}`}
          options={roleOptions}
          read={(aircraft) => read(aircraft)?.role ?? 'other'}
          write={(aircraft, role) => change({ role: role as Role })(aircraft)}
        />
        <PlusMinusFields name={name} read={read} write={(aircraft, fields) => change(fields)(aircraft)} />
        <Tick
          label="Locked where it is"
          step={`Lock or unlock ${name}`}
          read={(aircraft) => read(aircraft)?.locked === true}
          write={(aircraft, locked) => change({ locked })(aircraft)}
        />
        <SwitchTick id={id} name={name} kind="aboard" />
        <TextEntry
          long
          label="Notes"
          step={`Change the notes on ${name}`}
          read={(aircraft) => read(aircraft)?.notes}
          write={(aircraft, notes) => change({ notes })(aircraft)}
        />
        <KeepOnShelf id={id} />
        {practice && <Practice of={practice} />}
      </Fold>
    </>
  );
}
