import { switchesOf, UNDERCARRIAGE_ID } from '../airframe/loadSwitches';
import type { SwitchItem } from '../document/types';
import type { Checked } from './checked';
import type { Fault } from './fault';

/** What is wrong with the switches: ids used twice, things that are not there, things in two switches. */
export function switchFaults({ aircraft, sound, tell }: Checked): readonly Fault[] {
  const { switches } = aircraft;
  if (!switches || !sound('switches')) return [];
  const faults: Fault[] = [];
  const names = new Map<string, string>([[UNDERCARRIAGE_ID, 'the retracting legs']]);
  const switchOf = new Map<string, number>();
  const things = { without: thingsOf(aircraft, sound), empty: tanksOf(aircraft, sound) };
  for (const leg of retractingLegs(aircraft, sound)) switchOf.set(leg, -1);

  switches.forEach((loadSwitch, index) => {
    const user = names.get(loadSwitch.id);
    if (user) {
      const sentence = `the id "${loadSwitch.id}" already stands for ${user}; every switch needs one of its own.`;
      faults.push(tell(['switches', index, 'id'], sentence, 'an id of its own', `"${loadSwitch.id}"`));
    } else names.set(loadSwitch.id, `"${loadSwitch.name}"`);
    faults.push(...positionFaults(loadSwitch, index));
  });
  return faults;

  function positionFaults({ name, positions }: SwitchItem, index: number): Fault[] {
    const found: Fault[] = [];
    positions.forEach((position, place) => {
      const at = ['switches', index, 'positions', place];
      if (positions.findIndex(({ id }) => id === position.id) < place) {
        const sentence = `"${name}" has two positions with the id "${position.id}".`;
        found.push(tell([...at, 'id'], sentence, 'an id of its own', `"${position.id}"`));
      }
      for (const key of ['without', 'empty'] as const) {
        position[key]?.forEach((id, item) => {
          const before = switchOf.get(id);
          if (!things[key].has(id)) {
            const expected = key === 'empty' ? 'the id of a tank' : 'the id of a part, tank or element';
            found.push(
              tell(
                [...at, key, item],
                `there is no "${id}" that can be ${leaves[key]}.`,
                expected,
                `"${id}"`,
              ),
            );
          } else if (before !== undefined && before !== index) {
            const other = before < 0 ? 'the undercarriage' : `"${switches?.[before]?.name}"`;
            const sentence = `"${id}" is switched by ${other} already; one thing goes with one switch.`;
            found.push(tell([...at, key, item], sentence, 'a thing of its own', `"${id}"`));
          } else switchOf.set(id, index);
        });
      }
    });
    return found;
  }
}

const leaves = { without: 'left out', empty: 'emptied' } as const;

type Sound = Checked['sound'];
type Doc = Checked['aircraft'];

const idsIn = (list: unknown, sound: Sound, key: string): string[] =>
  Array.isArray(list)
    ? list.flatMap((item, index) => (sound(key, index, 'id') ? [item.id as string] : []))
    : [];

const tanksOf = ({ tanks }: Doc, sound: Sound) => new Set(idsIn(tanks, sound, 'tanks'));

const thingsOf = ({ structure, tanks, parts }: Doc, sound: Sound) =>
  new Set([
    ...idsIn(structure, sound, 'structure'),
    ...idsIn(tanks, sound, 'tanks'),
    ...idsIn(parts, sound, 'parts'),
  ]);

function retractingLegs({ structure }: Doc, sound: Sound): string[] {
  if (!Array.isArray(structure)) return [];
  return structure.flatMap((element, index) =>
    sound('structure', index) && element.kind === 'leg' && element.retract ? [element.id] : [],
  );
}

/** Limits that are stated for a load state which names a switch or a position that is not there, or one switch twice. */
export function statedForFaults({ aircraft, sound, tell }: Checked): readonly Fault[] {
  const stated = aircraft.targetBand?.statedFor;
  if (!stated || !sound('targetBand') || !sound('structure')) return [];
  if (aircraft.switches !== undefined && !sound('switches')) return [];
  const all = switchesOf(aircraft);
  const named = new Set<string>();
  return stated.switches.flatMap(({ switchId, positionId }, index) => {
    const at = ['targetBand', 'statedFor', 'switches', index];
    const found = all.find(({ id }) => id === switchId);
    const twice = named.has(switchId);
    named.add(switchId);
    if (!found) {
      const sentence = `the limits are stated for a switch "${switchId}" that is not there.`;
      return [tell([...at, 'switchId'], sentence, 'the id of a switch', `"${switchId}"`)];
    }
    if (twice) {
      const sentence = `the limits are stated for "${found.name}" in two positions at once.`;
      return [tell([...at, 'switchId'], sentence, 'each switch once', `"${switchId}"`)];
    }
    if (found.positions.some(({ id }) => id === positionId)) return [];
    const sentence = `"${found.name}" has no position "${positionId}" that the limits could be stated for.`;
    return [tell([...at, 'positionId'], sentence, 'the id of a position', `"${positionId}"`)];
  });
}
