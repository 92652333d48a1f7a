import type { Part } from '../document/types';
import { type Checked, soundItems } from './checked';
import type { Fault } from './fault';

/** What is wrong with the wiring: feeders that are not there or feed themselves, packs that are fed, ranges the wrong way round. */
export function powerFaults(checked: Checked): readonly Fault[] {
  const { tell } = checked;
  const wired = soundItems(checked, 'parts').filter(({ item }) => item.power !== undefined);
  const byId = new Map(wired.map(({ item }) => [item.id, item]));
  const faults: Fault[] = [];
  for (const { item, index } of wired) {
    const at = ['parts', index, 'power'];
    const { pack, regulator, use, fedBy = [] } = item.power ?? {};
    if (pack && (regulator || use || fedBy.length > 0)) {
      const sentence = `"${item.name}" is a pack, and a pack is neither fed nor does it use anything.`;
      faults.push(tell(at, sentence, 'a pack alone', 'a pack with more beside it'));
    }
    if (use && use.minV > use.maxV) {
      const sentence = `the least voltage of "${item.name}" is above the most.`;
      faults.push(tell([...at, 'use', 'minV'], sentence, `at most ${use.maxV} V`, `${use.minV} V`));
    }
    if (use && use.peakA < use.meanA) {
      const sentence = `the peak current of "${item.name}" is less than its mean.`;
      faults.push(tell([...at, 'use', 'peakA'], sentence, `at least ${use.meanA} A`, `${use.peakA} A`));
    }
    if (use?.followsThrottle && (use.idleA ?? 0) > use.meanA) {
      const sentence = `the current of "${item.name}" at idle is more than at full throttle.`;
      faults.push(tell([...at, 'use', 'idleA'], sentence, `at most ${use.meanA} A`, `${use.idleA} A`));
    }
    fedBy.forEach(({ from, pastRegulator }, place) => {
      const where = [...at, 'fedBy', place];
      const feeder = byId.get(from);
      if (!feeder) {
        const sentence = `nothing called "${from}" is in the wiring.`;
        faults.push(tell([...where, 'from'], sentence, 'the id of a part in the wiring', `"${from}"`));
      } else if (fedBy.findIndex((other) => other.from === from) < place) {
        const sentence = `"${item.name}" is fed by "${feeder.name}" twice.`;
        faults.push(tell([...where, 'from'], sentence, 'each feeder once', `"${from}"`));
      } else if (pastRegulator && !feeder.power?.regulator) {
        const sentence = `"${feeder.name}" has no regulator that could be passed by.`;
        faults.push(tell([...where, 'pastRegulator'], sentence, 'a part with a regulator', `"${from}"`));
      }
    });
    if (feedsItself(item, byId)) {
      const sentence = `"${item.name}" feeds itself.`;
      faults.push(tell([...at, 'fedBy'], sentence, 'feeders that it does not feed', 'a ring'));
    }
  }
  return faults;
}

function feedsItself(part: Part, byId: ReadonlyMap<string, Part>): boolean {
  const seen = new Set<string>();
  const open = (part.power?.fedBy ?? []).map(({ from }) => from);
  while (open.length > 0) {
    const id = open.pop() as string;
    if (id === part.id) return true;
    if (seen.has(id)) continue;
    seen.add(id);
    open.push(...(byId.get(id)?.power?.fedBy ?? []).map(({ from }) => from));
  }
  return false;
}
