import type { Entry } from './entry';

/** What is in the tanks and in the packs. */
export const fuelEntries = [
  {
    id: 'header-tank',
    word: 'Header tank',
    also: ['air trap', 'hopper'],
    says: [
      'A small tank between the main tanks and the engine.',
      'It stays full until the tanks that feed it are empty.',
      'So its mass stays where it is for nearly the whole flight.',
    ],
    related: ['burn', 'usable', 'travel'],
  },
  {
    id: 'dry-full',
    word: 'Dry and full',
    also: ['fuel state'],
    parts: ['dry', 'full'],
    says: [
      'Full: all of the usable fuel is aboard.',
      'Dry: all of the usable fuel is gone; what cannot be drawn is still there.',
    ],
    related: ['usable', 'burn', 'load-state'],
  },
  {
    id: 'usable',
    word: 'Usable and unusable fuel',
    also: [],
    parts: ['usable', 'unusable', 'trapped fuel', 'residual fuel'],
    says: [
      'Usable fuel is what the engine can draw.',
      'Unusable fuel stays in the tank when the engine stops.',
      'It still weighs, so it is counted to the end.',
    ],
    related: ['dry-full', 'header-tank', 'clunk'],
  },
  {
    id: 'clunk',
    word: 'Clunk and vent',
    also: ['pick-up'],
    parts: ['clunk', 'vent'],
    says: [
      'The clunk is a weight on a hose in the tank; fuel leaves through it.',
      'It falls to where the fuel lies. The vent lets air in behind.',
    ],
    related: ['usable', 'header-tank'],
  },
  {
    id: 'burn',
    word: 'Burn',
    also: [],
    parts: ['fuel profile'],
    says: [
      'How the fuel goes down over the flight.',
      'Tanks often empty one after the other, so the CG may turn back on its way.',
      'The fuel profile says how much is drawn in each part of the flight.',
    ],
    related: ['travel', 'dry-full', 'header-tank'],
  },
  {
    id: 'travel',
    word: 'CG travel',
    also: ['travel'],
    says: [
      'The path of the CG from full to dry.',
      'All of it must lie in the target band, not only its ends.',
    ],
    related: ['burn', 'band', 'cg'],
  },
  {
    id: 'reserve',
    word: 'Reserve',
    also: [],
    says: [
      'What should be left in the tank or pack after landing.',
      'It is for a second try at the landing.',
    ],
    related: ['burn', 'wiring'],
  },
  {
    id: 'internal-resistance',
    word: 'Internal resistance',
    also: ['resistance'],
    parts: ['mΩ'],
    says: [
      'What inside a pack stands in the way of its current.',
      'The more current is drawn, the more volts it takes away.',
      'It grows with age and cold.',
    ],
    related: ['wiring', 'reserve'],
  },
  {
    id: 'wiring',
    word: 'Wiring',
    also: ['power'],
    says: [
      'What feeds what: packs, regulators, receiver, servos and motor.',
      'It holds when everything gets volts that it can take, for long enough.',
    ],
    related: ['internal-resistance', 'reserve'],
  },
] as const satisfies readonly Entry[];
