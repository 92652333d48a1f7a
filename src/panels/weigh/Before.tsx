import { useState } from 'react';
import { Modal } from '../Modal';

const cautions: readonly { readonly about: string; readonly says: string }[] = [
  {
    about: 'Lifting',
    says: 'Lift a heavy model with a second person, by its strong points. Chock the wheels; a scale is a step that it can roll off.',
  },
  {
    about: 'Packs and propeller',
    says: 'Weigh with the packs in their places but unplugged, and the propeller off or safe from turning. What was taken off must come off the list too, or lie where it belongs.',
  },
  {
    about: 'Fuel',
    says: 'Weigh drained unless the weigh-in says otherwise. Fill and drain outdoors, away from sparks. A part-filled tank shifts its fuel as the model tilts.',
  },
  {
    about: 'Lead',
    says: 'Lead is poisonous: gloves on, hands washed. Ballast is not flown until it is fastened.',
  },
  {
    about: 'Who has the last word',
    says: 'Scales do not see cracks. Your national association’s rules and an experienced inspector come before anything said here.',
  },
];

/** What to mind before the model goes on the scales. */
export function Before() {
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" className="link weigh-before" onClick={() => setOpen(true)}>
        Before you lift it
      </button>
      {open && (
        <Modal title="Before you lift it" onClose={() => setOpen(false)}>
          {cautions.map(({ about, says }) => (
            <section key={about} className="caution">
              <h3>{about}</h3>
              <p>{says}</p>
            </section>
          ))}
        </Modal>
      )}
    </>
  );
}
