import { Modal } from './Modal';

const cautions: readonly { readonly about: string; readonly says: string }[] = [
  {
    about: 'These are estimates',
    says: 'The bench works out what it was told. Typical masses are only typical: weigh your own parts, weigh the finished model on scales at its supports, and trust the scales before the screen.',
  },
  {
    about: 'Who has the last word',
    says: 'Your national association’s rules, the rules of your flying site, the maker’s instructions and an experienced inspector come before anything said here. Have the model inspected before it flies, and again after a repair.',
  },
  {
    about: 'The first flight',
    says: 'Begin at the forward end of the target band, in calm air, with an experienced pilot. Check the balance ready to fly, at every fuel state, with wheels up and down. Check control directions, throws, range and fail-safe. A tail-heavy model may not be flyable at all.',
  },
  {
    about: 'Propellers and rotors',
    says: 'Disconnect the motor, or take the propeller off, while you weigh, balance and set up. Stay behind the propeller’s arc and tether the model whenever an engine can start.',
  },
  {
    about: 'Fuel',
    says: 'Petrol, methanol and kerosene burn and their vapours travel. Fill and empty outdoors, away from sparks, with an extinguisher at hand. Weigh with the tanks empty unless you need them full.',
  },
  {
    about: 'Lithium packs',
    says: 'Charge on a surface that cannot burn and never unattended. Do not fly a swollen or dented pack. A pack that moves in flight moves the CG: strap it, do not only stick it.',
  },
  {
    about: 'Turbines',
    says: 'Keep clear of intake and exhaust, have a fire extinguisher of the kind that the maker asks for and a helper who can use it. Many sites and associations ask for a licence.',
  },
  {
    about: 'Lead',
    says: 'Lead is poisonous. Wear gloves, do not sand it, wash your hands, seal it and fasten it so that it cannot come loose.',
  },
];

/** What to mind before a model flies. */
export function Cautions({ onClose }: { readonly onClose: () => void }) {
  return (
    <Modal title="Before the first flight" onClose={onClose} wide>
      {cautions.map(({ about, says }) => (
        <section key={about} className="caution">
          <h3>{about}</h3>
          <p>{says}</p>
        </section>
      ))}
    </Modal>
  );
}
