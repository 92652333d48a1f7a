import { switchesOf, UNDERCARRIAGE_ID } from '../airframe/loadSwitches';
import { liquidWord, midSentence } from '../document/inWords';
import type { Aircraft } from '../document/types';
import { defaultLoadFactors } from '../fit/restraint';
import { cautionsFor } from '../words/cautions';
import { type Block, heading, words } from './blocks';

/** What to go through before the first flight: habits of builders and inspectors, without a published source. */
export function checkBlocks(aircraft: Aircraft, state: string, balance: string): readonly Block[] {
  return [
    heading('Before the first flight'),
    words(
      'A ticked list is no permission to fly. The rules of the national association and of the site, the makers’ instructions and an experienced inspector come before it; where they ask for more, they are right.',
      'lead',
    ),
    heading('On the bench', 2),
    ...benchChecks(aircraft, state, balance),
    heading('At the field', 2),
    ...fieldChecks(aircraft),
    heading('To heed', 2),
    ...cautionsFor(aircraft)
      .filter(({ id }) => id !== 'first-flight')
      .map(({ about, says }): Block => ({ kind: 'tick', text: about, note: says })),
    { kind: 'fill', labels: ['Builder', 'Looked over by', 'On'] },
    words('Whoever signs has seen the model, not only this sheet.', 'note'),
  ];
}

const tick = (text: string): Block => ({ kind: 'tick', text });

function benchChecks(aircraft: Aircraft, state: string, balance: string): readonly Block[] {
  const { kind, parts, leads = [], loadFactors, hatches = [], tanks } = aircraft;
  const has = (role: string) => parts.some((part) => part.role === role);
  const factor = (loadFactors ?? defaultLoadFactors).ahead;
  return [
    tick(`Balanced on a stand or scales, ${midSentence(state)}: ${balance}. Found: __________`),
    tick(`Balanced again with tanks and load as for the first flight, and across: neither wing heavy.`),
    tick('Mass of the whole weighed, and within what association and site allow.'),
    ...(parts.length > 0
      ? [tick(`Every fixing held against a firm pull; each should bear ${factor} times the weight ahead.`)]
      : []),
    ...(has('ballast') ? [tick('Ballast screwed or bonded so that it cannot come loose.')] : []),
    ...(leads.length > 0 ? [tick('Leads reach without a strain, plugs secured, none chafing.')] : []),
    ...(hatches.length > 0 ? [tick('Hatches and canopy latched, and still so when shaken.')] : []),
    ...(has('control')
      ? [
          tick(
            'Control surfaces: the right way round, the throws as planned, hinges and horns firm, no play.',
          ),
          tick('Stabiliser or gyro, if there is one: it corrects against the movement, not with it.'),
        ]
      : []),
    ...(tanks.length > 0
      ? [tick(`Tanks and lines tight, vents open; ${liquidWord(aircraft)} as planned.`)]
      : []),
    ...(kind === 'petrol' ? [tick('Engine mount, propeller and spinner tight; kill switch works.')] : []),
    ...(kind === 'electric'
      ? [tick('Motor mount and propeller tight; the motor cannot start by itself.')]
      : []),
    ...(kind === 'turbine'
      ? [tick('Turbine by its maker’s list; fail-safe shuts it down; extinguisher and helper there.')]
      : []),
    ...(has('energy') ? [tick('Packs charged, sound, strapped; voltage read under load.')] : []),
  ];
}

function fieldChecks(aircraft: Aircraft): readonly Block[] {
  const switches = switchesOf(aircraft);
  const droppable = switches.filter(
    ({ id, positions }) => id !== UNDERCARRIAGE_ID && positions.every(({ flies }) => flies),
  );
  return [
    tick('Range checked as the maker of the radio says, with everything running.'),
    tick('Fail-safe set and seen to work.'),
    ...(switches.some(({ id }) => id === UNDERCARRIAGE_ID)
      ? [tick('Undercarriage up and down three times, doors clear, legs locked.')]
      : []),
    ...droppable.map(({ name }) => tick(`${name}: every position tried on the ground.`)),
    tick('Calm air, clear circuit, an experienced pilot, somebody who calls out.'),
    tick('First flights near the forward end of the band; high enough before anything is tried out.'),
  ];
}
