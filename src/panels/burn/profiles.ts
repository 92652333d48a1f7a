import type { Fuel } from '../../model/document/types';

type Profile = Fuel['profile'];

const minutes = (count: number) => count * 60;

/** Ready-made fuel profiles. Durations and throttles are common practice, no source. */
export const burnProfiles: readonly Profile[] = [
  {
    name: 'Circuits',
    phases: [
      { name: 'Taxi', durationS: minutes(1), throttlePct: 10 },
      { name: 'Take-off', durationS: 15, throttlePct: 100 },
      { name: 'Circuits', durationS: minutes(8), throttlePct: 45 },
      { name: 'Approach and landing', durationS: minutes(1), throttlePct: 15 },
    ],
  },
  {
    name: 'Aerobatics',
    phases: [
      { name: 'Take-off', durationS: 15, throttlePct: 100 },
      { name: 'Figures going up', durationS: minutes(4), throttlePct: 90 },
      { name: 'Figures coming down', durationS: minutes(4), throttlePct: 30 },
      { name: 'Approach and landing', durationS: minutes(1), throttlePct: 15 },
    ],
  },
  {
    name: 'Survey',
    phases: [
      { name: 'Taxi', durationS: 90, throttlePct: 10 },
      { name: 'Take-off', durationS: 25, throttlePct: 100 },
      { name: 'Climb', durationS: minutes(3), throttlePct: 75 },
      { name: 'Survey lines', durationS: minutes(40), throttlePct: 45 },
      { name: 'Descent', durationS: 150, throttlePct: 15 },
      { name: 'Approach and landing', durationS: minutes(2), throttlePct: 25 },
    ],
  },
  {
    name: 'Towing a glider',
    phases: [
      { name: 'Take-off', durationS: 20, throttlePct: 100 },
      { name: 'Tow', durationS: minutes(3), throttlePct: 95 },
      { name: 'Descent', durationS: minutes(1), throttlePct: 5 },
      { name: 'Landing, next glider', durationS: minutes(2), throttlePct: 10 },
    ],
  },
];

/** What water ballast does instead: it waits, and then it goes. */
export const dumpProfiles: readonly Profile[] = [
  { name: 'Dump', phases: [{ name: 'Valve open', durationS: minutes(5), throttlePct: 100 }] },
  {
    name: 'Fly, then dump',
    phases: [
      { name: 'Valve shut', durationS: minutes(20), throttlePct: 0 },
      { name: 'Valve open', durationS: minutes(5), throttlePct: 100 },
    ],
  },
];
