import type { Checked } from './checked';
import type { Fault } from './fault';

/** What the schema cannot see in the log of weigh-ins: two of one id. */
export function weighFaults({ aircraft, sound, tell }: Checked): readonly Fault[] {
  const list: unknown = aircraft.weighIns;
  if (!Array.isArray(list)) return [];
  const seen = new Set<string>();
  return (list as NonNullable<typeof aircraft.weighIns>).flatMap((entry, index) => {
    if (!sound('weighIns', index, 'id')) return [];
    const { id } = entry;
    if (!seen.has(id)) {
      seen.add(id);
      return [];
    }
    const sentence = `two weigh-ins have the id "${id}"; every weigh-in needs one of its own.`;
    return [tell(['weighIns', index, 'id'], sentence, 'an id of its own', `"${id}"`)];
  });
}
