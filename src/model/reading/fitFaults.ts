import { normalise } from '../../engine/geometry/vec3';
import { roles } from '../document/schema/aircraft';
import { type Checked, soundItems } from './checked';
import type { Fault } from './fault';

const lists = ['bays', 'hatches', 'leads'] as const;
const ballastLists = [
  { key: 'ballastSpots', what: 'ballast spot' },
  { key: 'ballastFree', what: 'zone kept free of ballast' },
] as const;

/** References that lead nowhere, ids used twice and openings without a direction, among what is kept for fit. */
export function fitFaults(checked: Checked): readonly Fault[] {
  const { aircraft, sound, tell } = checked;
  const faults: Fault[] = [];
  const idsOf = (list: unknown): string[] =>
    Array.isArray(list) ? list.flatMap((item) => (typeof item?.id === 'string' ? [item.id] : [])) : [];
  const items = new Set([...idsOf(aircraft.parts), ...idsOf(aircraft.tanks)]);
  const bays = new Set(idsOf(aircraft.bays));

  const taken = new Set([...items, ...idsOf(aircraft.structure), ...idsOf(aircraft.referencePoints)]);
  for (const key of lists) {
    for (const [index, item] of entries<{ readonly id: string }>(aircraft[key])) {
      if (!sound(key, index, 'id')) continue;
      if (taken.has(item.id)) {
        const sentence = `the id "${item.id}" is used already; every id must be unique in the file.`;
        faults.push(tell([key, index, 'id'], sentence, 'an id of its own', `"${item.id}"`));
      }
      taken.add(item.id);
    }
  }
  for (const { key, what } of ballastLists) {
    const ids = new Set<string>();
    for (const [index, { id }] of soundEntries<{ readonly id: string }>(aircraft[key], (at) =>
      sound(key, at, 'id'),
    )) {
      if (ids.has(id)) {
        const sentence = `another ${what} has the id "${id}" already.`;
        faults.push(tell([key, index, 'id'], sentence, 'an id of its own', `"${id}"`));
      }
      ids.add(id);
    }
  }
  for (const { item, index } of soundItems(checked, 'parts')) {
    if (item.bayId === undefined || bays.has(item.bayId)) continue;
    const sentence = `there is no bay "${item.bayId}".`;
    faults.push(tell(['parts', index, 'bayId'], sentence, 'the id of a bay', `"${item.bayId}"`));
  }
  for (const [index, hatch] of entries(aircraft.hatches)) {
    if (!sound('hatches', index) || normalise(hatch.normal)) continue;
    faults.push(tell(['hatches', index, 'normal'], 'it has no direction.', 'a direction', '[0, 0, 0]'));
  }
  for (const [index, lead] of entries(aircraft.leads)) {
    for (const end of ['from', 'to'] as const) {
      if (!sound('leads', index, end) || items.has(lead[end])) continue;
      const sentence = `there is no part or tank "${lead[end]}".`;
      faults.push(tell(['leads', index, end], sentence, 'the id of a part or tank', `"${lead[end]}"`));
    }
  }
  const meant = new Set<string>([...items, ...roles]);
  for (const [index, rule] of entries(aircraft.keepApart)) {
    for (const end of ['between', 'and'] as const) {
      if (!sound('keepApart', index, end) || meant.has(rule[end])) continue;
      const sentence = `"${rule[end]}" is neither a role nor a part or tank.`;
      faults.push(
        tell(['keepApart', index, end], sentence, 'a role, or the id of a part or tank', `"${rule[end]}"`),
      );
    }
  }
  return faults;
}

/** Those of its entries that the schema trusts. */
const soundEntries = <T>(list: readonly T[] | undefined, trusted: (at: number) => boolean): [number, T][] =>
  entries(list).filter(([at]) => trusted(at));

/** The entries of a list that may be missing or no list at all. */
const entries = <T>(list: readonly T[] | undefined): [number, T][] =>
  Array.isArray(list) ? [...list.entries()] : [];
