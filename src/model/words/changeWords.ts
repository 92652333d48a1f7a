import type { Vec3 } from '../../engine/geometry/types';
import { listed } from '../document/inWords';
import { shownText } from '../document/names';
import type { Aircraft } from '../document/types';
import type { Difference, Differences } from '../history/differences';
import type { Say } from './say';

/** Less than this is the same place, mm, and the same mass, g: it would be shown as nothing. */
const SAME = 0.05;

const WAYS = [
  ['forward', 'aft'],
  ['left', 'right'],
  ['down', 'up'],
] as const;

/** "12 mm aft and 3 mm up"; empty for what is as good as nothing. */
const wayWords = (movedMm: Vec3, say: Say): string =>
  listed(
    WAYS.flatMap(([less, more], axis) => {
      const by = movedMm[axis] ?? 0;
      return Math.abs(by) < SAME ? [] : [`${say.length(Math.abs(by))} ${by > 0 ? more : less}`];
    }),
  );

/** One sentence for a thing that is not as it was. */
export function changeWords(change: Difference, say: Say): string {
  const { kind, byG, movedMm, wasName, otherwise } = change;
  const name = shownText(change.name);
  const mass = Math.abs(byG) < SAME ? '' : say.mass(Math.abs(byG));
  if (kind === 'added') return `${name} came in${mass && `, ${mass}`}.`;
  if (kind === 'removed') return `${name} came out${mass && `, ${mass} less`}.`;
  const way = movedMm ? wayWords(movedMm, say) : '';
  const words = [
    ...(wasName === null ? [] : [`was called ${shownText(wasName)}`]),
    ...(way ? [`${way}`] : []),
    ...(mass ? [`${mass} ${byG > 0 ? 'heavier' : 'lighter'}`] : []),
  ];
  if (words.length === 0) return `${name}: other entries changed.`;
  return `${name}: ${listed(words)}${otherwise ? ', and other entries changed' : ''}.`;
}

/** What the members of a document are called; those that are not here go as “other entries”. */
const MEMBERS: Partial<Record<keyof Aircraft, string>> = {
  name: 'the name',
  kind: 'the kind of engine',
  notes: 'the notes',
  datum: 'the datum',
  referencePoints: 'the reference points',
  targetBand: 'the band',
  lateralToleranceMm: 'the lateral tolerance',
  bareAirframe: 'the bare airframe as weighed',
  fuel: 'the fuel',
  stability: 'the margin wanted',
  leads: 'the leads',
  weighIns: 'the weigh-ins',
  talk: 'the talk',
};

/** One sentence for what changed beside the things aboard and the airframe; null where nothing did. */
export function memberWords({ members }: Differences): string | null {
  if (members.length === 0) return null;
  const words = new Set(members.map((member) => MEMBERS[member] ?? 'other entries'));
  const last = words.delete('other entries') ? ['other entries'] : [];
  const all = listed([...words, ...last]);
  return `${all.charAt(0).toUpperCase()}${all.slice(1)} changed.`;
}
