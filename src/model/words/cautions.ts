import type { Aircraft } from '../document/types';

/** Something to heed before a model flies. */
export interface Caution {
  readonly id:
    | 'estimates'
    | 'last-word'
    | 'first-flight'
    | 'propeller'
    | 'fuel'
    | 'lithium'
    | 'turbine'
    | 'lead';
  readonly about: string;
  readonly says: string;
}

export const cautions: readonly Caution[] = [
  {
    id: 'estimates',
    about: 'These are estimates',
    says: 'The bench works out what it was told. Typical masses are only typical: weigh your own parts, weigh the finished model on scales at its supports, and trust the scales before the screen.',
  },
  {
    id: 'last-word',
    about: 'Who has the last word',
    says: 'Your national association’s rules, the rules of your flying site, the maker’s instructions and an experienced inspector come before anything said here. Have the model inspected before it flies, and again after a repair.',
  },
  {
    id: 'first-flight',
    about: 'The first flight',
    says: 'Begin at the forward end of the target band, in calm air, with an experienced pilot. Check the balance ready to fly, at every fuel state, with wheels up and down. Check control directions, throws, range and fail-safe. A tail-heavy model may not be flyable at all.',
  },
  {
    id: 'propeller',
    about: 'Propellers and rotors',
    says: 'Disconnect the motor, or take the propeller off, while you weigh, balance and set up. Stay behind the propeller’s arc and tether the model whenever an engine can start.',
  },
  {
    id: 'fuel',
    about: 'Fuel',
    says: 'Petrol, methanol and kerosene burn and their vapours travel. Fill and empty outdoors, away from sparks, with an extinguisher at hand. Weigh with the tanks empty unless you need them full.',
  },
  {
    id: 'lithium',
    about: 'Lithium packs',
    says: 'Charge on a surface that cannot burn and never unattended. Do not fly a swollen or dented pack. A pack that moves in flight moves the CG: strap it, do not only stick it.',
  },
  {
    id: 'turbine',
    about: 'Turbines',
    says: 'Keep clear of intake and exhaust, have a fire extinguisher of the kind that the maker asks for and a helper who can use it. Many sites and associations ask for a licence.',
  },
  {
    id: 'lead',
    about: 'Lead',
    says: 'Lead is poisonous. Wear gloves, do not sand it, wash your hands, seal it and fasten it so that it cannot come loose.',
  },
];

/** Those that apply to an aircraft; what cannot be told from the list counts as aboard. */
export const cautionsFor = (aircraft: Aircraft): readonly Caution[] =>
  cautions.filter(({ id }) => applies(id, aircraft));

function applies(id: Caution['id'], { kind, fuel, tanks, parts, ballastSpots = [] }: Aircraft): boolean {
  const has = (role: string) => parts.some((part) => part.role === role);
  switch (id) {
    case 'estimates':
    case 'last-word':
    case 'first-flight':
      return true;
    case 'propeller':
      return kind === 'petrol' || kind === 'electric';
    case 'fuel':
      return kind === 'petrol' || kind === 'turbine' || (tanks.length > 0 && fuel?.use === 'burn');
    case 'lithium':
      return has('energy') || kind === 'electric';
    case 'turbine':
      return kind === 'turbine';
    case 'lead':
      return has('ballast') || ballastSpots.length > 0;
  }
}
