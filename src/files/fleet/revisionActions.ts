import { isName, NAME_WANTED } from '../../model/document/names';
import type { Aircraft } from '../../model/document/types';
import { writeAircraft } from '../../model/document/write';
import { parseAircraft } from '../../model/reading/read';
import { type ActionParts, type FleetWork, Refusal } from './fleetWork';

/** What a person does with the revisions of the aircraft on the bench. */
export const revisionActions = ({ bench, fleet }: ActionParts, { act, onBench }: FleetWork) => ({
  keepRevision: (name: string) =>
    act(async () => {
      const given = nameGiven(name);
      const { fleetId, committed } = bench.document.api.getState();
      const text = writeAircraft(committed);
      await fleet.keepRevision({ fleetId, atMs: Date.now(), name: given, why: '', text });
    }),
  renameRevision: (key: number, name: string) =>
    act(async () => fleet.renameRevision(onBench(), key, nameGiven(name))),
  forgetRevision: (key: number) => act(() => fleet.forgetRevision(onBench(), key)),
  readRevision: async (key: number): Promise<Aircraft | string> => {
    const kept = (await fleet.revisions(onBench())).find((revision) => revision.key === key);
    if (!kept) return 'This revision is no longer there.';
    const result = parseAircraft(kept.text);
    return result.ok ? result.aircraft : `It does not read: ${result.faults[0]?.sentence ?? ''}`;
  },
});

function nameGiven(name: string): string {
  const given = name.trim();
  if (!isName(given)) throw new Refusal(`Expected ${NAME_WANTED}.`);
  return given;
}
