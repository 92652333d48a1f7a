import type { Entry } from './entry';

/** Words of this screen. */
export const benchEntries = [
  {
    id: 'verdict',
    word: 'Verdict',
    also: ['answer', 'headline'],
    says: [
      'The sentence at the top: whether it balances and fits.',
      'It counts every load state that flies, not only the one on the screen.',
    ],
    related: ['load-state', 'band', 'fit'],
  },
  {
    id: 'load-state',
    word: 'Load state',
    also: ['state'],
    parts: ['worst'],
    says: [
      'One way in which the aircraft may be loaded.',
      'It is a combination of fuel, undercarriage up or down, and payload on or off.',
      'The worst is the one whose CG comes nearest to a limit, or lies farthest past it.',
    ],
    related: ['verdict', 'dry-full', 'band'],
  },
  {
    id: 'fit',
    word: 'Fit',
    also: [],
    parts: ['clash', 'clearance'],
    says: [
      'Whether everything has room: no two things in one place, nothing through the skin.',
      'It is judged in every load state.',
    ],
    related: ['bay', 'verdict'],
  },
  {
    id: 'bay',
    word: 'Bay and hatch',
    also: [],
    parts: ['bay', 'hatch'],
    says: ['A bay is a room in which parts may be mounted.', 'The hatch is the opening they go in through.'],
    related: ['fit'],
  },
  {
    id: 'plus-minus',
    word: '±',
    also: ['how sure', 'plus or minus', 'uncertainty'],
    says: [
      'How far off a figure may be.',
      'In 95 of 100 cases the truth lies within it.',
      'Weighing a thing makes its ± small.',
    ],
    related: ['estimate', 'cg'],
  },
  {
    id: 'estimate',
    word: 'Estimate',
    also: ['estimated', 'typical', 'assumed'],
    says: [
      'A figure that was not measured: it was worked out, or is what is usual.',
      'Treat it with care until you have checked it.',
    ],
    related: ['plus-minus', 'neutral-point'],
  },
  {
    id: 'load-factor',
    word: 'Load factor',
    also: [],
    parts: ['g'],
    says: [
      'How many times its own weight a thing pulls at its fixing.',
      'In a hard landing or a tight turn that is several times.',
    ],
    related: ['fit', 'moment'],
  },
] as const satisfies readonly Entry[];
