import { unlikeTwins } from '../document/twins';
import type { Part, TankItem } from '../document/types';
import { type Checked, soundItems } from './checked';
import type { Fault } from './fault';

/** Pairs that are none: a twin that is not there, that does not name this one, or that is not its mirror image. */
export function twinFaults(checked: Checked): readonly Fault[] {
  const parts = soundItems(checked, 'parts');
  const tanks = soundItems(checked, 'tanks');
  const byId = new Map<string, Part | TankItem>();
  for (const { item } of [...parts, ...tanks]) byId.set(item.id, item);
  const complete = (key: 'parts' | 'tanks', count: number) => checked.aircraft[key]?.length === count;
  // A twin that the schema found fault with may be the one that is missed here.
  if (!complete('parts', parts.length) || !complete('tanks', tanks.length)) return [];
  const faultsOf = (key: 'parts' | 'tanks', index: number, item: Part | TankItem): Fault[] => {
    if (item.twinId === undefined) return [];
    const at = [key, index, 'twinId'];
    const received = `"${item.twinId}"`;
    const twin = byId.get(item.twinId);
    if (!twin || twin === item) {
      const sentence = twin
        ? 'it cannot be a mirrored pair with itself.'
        : `there is no part or tank "${item.twinId}" to be a mirrored pair with.`;
      return [checked.tell(at, sentence, 'the id of the other one of the pair', received)];
    }
    if (twin.twinId !== item.id) {
      const sentence = `a mirrored pair names each other: "${twin.name}" names ${twin.twinId === undefined ? 'nothing' : `"${twin.twinId}"`}.`;
      return [checked.tell(at, sentence, 'a twin that names this one', received)];
    }
    // Each pair is held to its likeness once.
    if (twin.id < item.id) return [];
    const why = unlikeTwins(item, twin);
    if (why === null) return [];
    const sentence = `it is a mirrored pair with "${twin.name}" but ${why}.`;
    return [checked.tell(at, sentence, 'the mirror image of the other one', received)];
  };
  return [
    ...parts.flatMap(({ item, index }) => faultsOf('parts', index, item)),
    ...tanks.flatMap(({ item, index }) => faultsOf('tanks', index, item)),
  ];
}
