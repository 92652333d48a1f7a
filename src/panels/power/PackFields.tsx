import { chemistries } from '../../engine/power/cells';
import { typicalMassOf, withTypicalMass } from '../../model/power/typical';
import { chemistryNames } from '../../model/words/powerWords';
import { useCommitted } from '../../store/react';
import { Choice } from '../fields/Choice';
import { EditButton } from '../fields/EditButton';
import { useReadings } from '../readings';
import { changed, Figure, type Of, partOf, powerOf } from './Figure';

const chemistryOptions = chemistries.map((value) => ({ value, label: chemistryNames[value] }));

/** What a pack is made of, and what one like it weighs. */
export function PackFields({ id, name }: Of) {
  const figure = { id, name, section: 'pack' } as const;
  return (
    <>
      <Choice
        label="Cells of"
        options={chemistryOptions}
        step={`Change the cells of ${name}`}
        read={(aircraft) => powerOf(id)(aircraft)?.pack?.chemistry ?? 'lipo'}
        write={(aircraft, value) =>
          changed(aircraft, id, 'pack', { chemistry: value as (typeof chemistries)[number] })
        }
      />
      <Figure {...figure} field="cells" label="In series" unit="" />
      <Figure {...figure} field="capacityMah" label="Capacity" unit="mAh" />
      <Figure {...figure} field="usablePct" label="To be used" unit="%" empty="as is common" />
      <Figure {...figure} field="maxA" label="Good for" unit="A" empty="not judged" />
      <Figure
        {...figure}
        field="milliohm"
        label="Resistance"
        term="internal-resistance"
        unit="mΩ"
        empty="as is common"
      />
      <TypicalMass id={id} name={name} />
      <p className="hint">
        Charge away from the model, on a surface that cannot burn; a pack that is swollen, dented or hot is
        not flown.
      </p>
    </>
  );
}

/** What a pack of these cells commonly weighs, against what is entered, and a way to take it until it is weighed. */
function TypicalMass({ id, name }: Of) {
  const say = useReadings();
  const part = useCommitted(partOf(id));
  const typical = part && typicalMassOf(part);
  if (!part || !typical) return null;
  const { massG, plusMinusG, leastG, mostG } = typical;
  const entered = part.massFrom === 'unknown' ? 'not known' : say.mass(part.massG);
  const far = part.massFrom !== 'unknown' && (part.massG < leastG || part.massG > mostG);
  return (
    <>
      <p className="hint">
        It weighs {entered}; commonly {say.mass(massG)} ± {say.mass(plusMinusG)}.
        {far && ' That is far outside: look at cells, capacity and mass again.'}
      </p>
      {part.massFrom !== 'weighed' && part.massG !== Math.round(massG) && (
        <EditButton step={`Typical mass of ${name}`} edit={(aircraft) => withTypicalMass(aircraft, id)}>
          Take the typical mass
        </EditButton>
      )}
    </>
  );
}
