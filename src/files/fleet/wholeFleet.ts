import { writeAircraft } from '../../model/document/write';
import { textDigest } from '../../model/history/textDigest';
import { LARGEST_FLEET } from '../../model/reading/fileSize';
import { textOf } from '../../model/reading/fileText';
import { type FleetFileEntry, readFleetFile, writeFleetFile } from '../../model/reading/fleetFile';
import { parseAircraft } from '../../model/reading/read';
import { newFleetId } from '../../store/fleetId';
import { isFull, reason } from '../storage';
import { cardOf } from './cardOf';
import type { Fleet } from './fleet';

/** Everything in one text; `left` counts what does not read and so is not in it. */
export async function fleetToFile(
  fleet: Fleet,
): Promise<{ readonly text: string; readonly count: number; readonly left: number }> {
  const entries: FleetFileEntry[] = [];
  let left = 0;
  for (const { id, changedAtMs, deletedAtMs } of await fleet.cards()) {
    if (deletedAtMs !== null) continue;
    const kept = await fleet.read(id);
    const read = kept && parseAircraft(kept.text);
    if (!read?.ok) {
      left += 1;
      continue;
    }
    const revisions = (await fleet.revisions(id)).flatMap(({ atMs, name, why, text }) => {
      const earlier = parseAircraft(text);
      return earlier.ok ? [{ atMs, name, why, aircraft: earlier.aircraft }] : [];
    });
    entries.push({ id, changedAtMs, aircraft: read.aircraft, revisions });
  }
  return { text: writeFleetFile(entries), count: entries.length, left };
}

export type TakenIn = { readonly ok: boolean; readonly sentence: string; readonly left: number };

/** Takes a file with a fleet in. What is there already stays as it is; another state of it comes beside it as a copy. */
export async function takeInFleet(fleet: Fleet, file: File): Promise<TakenIn> {
  const refused = (sentence: string): TakenIn => ({ ok: false, sentence, left: 0 });
  if (file.size > LARGEST_FLEET)
    return refused(
      `${file.name} is too large: expected at most ${LARGEST_FLEET / 1024 / 1024} MB, got ${Math.ceil(file.size / 1024 / 1024)} MB.`,
    );
  const bytes = textOf(new Uint8Array(await file.arrayBuffer()), LARGEST_FLEET);
  if (!bytes.ok) return refused(`${file.name}: ${bytes.fault.sentence}`);
  const { entries, faults } = readFleetFile(bytes.text);
  if (entries.length === 0) return refused(`${file.name}: ${faults[0]?.sentence ?? 'no aircraft is in it.'}`);
  const counts = { new: 0, there: 0, beside: 0 };
  let stopped: unknown;
  for (const entry of entries) {
    try {
      counts[await takeIn(fleet, entry)] += 1;
    } catch (error) {
      stopped = error;
      break;
    }
  }
  const notTaken = entries.length - counts.new - counts.there - counts.beside;
  const sentence = [
    `From ${file.name}: ${counts.new} taken in`,
    ...(counts.there > 0 ? [`${counts.there} were there already`] : []),
    ...(counts.beside > 0
      ? [`${counts.beside} came as a copy beside another state of the same aircraft`]
      : []),
  ].join(', ');
  const [first] = faults;
  const lost = first
    ? ` ${faults.length} could not be read and are left out; the first: ${first.sentence}`
    : '';
  const kept = notTaken > 0 ? ` ${notTaken} are not taken in whole: ${whyStopped(stopped)}` : '';
  return { ok: true, sentence: `${sentence}.${kept}${lost}`, left: faults.length + notTaken };
}

const whyStopped = (error: unknown): string =>
  isFull(error)
    ? 'the browser has no room left for the fleet. Make room and take the file in once more.'
    : `the browser could not keep them (${reason(error)}). Take the file in once more.`;

/** An aircraft that is there already brings those of its revisions that are not. */
async function takeIn(fleet: Fleet, entry: FleetFileEntry): Promise<'new' | 'there' | 'beside'> {
  const { id, aircraft, changedAtMs } = entry;
  const text = writeAircraft(aircraft);
  const digest = textDigest(text);
  const cards = await fleet.cards();
  const same = cards.find((card) => card.digest === digest && card.deletedAtMs === null);
  const isTaken = id === '' || cards.some((card) => card.id === id);
  const place = same?.id ?? (isTaken ? newFleetId() : id);
  if (!same) {
    const card = cardOf(place, aircraft, text, { tone: null, changedAtMs });
    await fleet.put({ card, text, history: null, seen: null });
  }
  await fleet.keepRevisions(place, await missingRevisions(fleet, place, entry));
  if (same) return 'there';
  return isTaken && id !== '' ? 'beside' : 'new';
}

/** Those of the file that a place does not have, oldest first. */
async function missingRevisions(fleet: Fleet, fleetId: string, { revisions }: FleetFileEntry) {
  const there = new Set((await fleet.revisions(fleetId)).map(({ atMs, text }) => `${atMs} ${text}`));
  return [...revisions]
    .sort((a, b) => a.atMs - b.atMs)
    .map(({ aircraft, ...said }) => ({ ...said, fleetId, text: writeAircraft(aircraft) }))
    .filter(({ atMs, text }) => !there.has(`${atMs} ${text}`));
}
