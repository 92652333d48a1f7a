import type { Laid } from '../model/document/traces';
import { readDrawing } from '../model/reading/keptDrawing';
import type { Bench } from '../store/bench';
import type { TextStorage } from './storage';

const keyOf = (fleetId: string): string => `counterpoise.drawings.${fleetId}`;

/** Keeps the drawings that are in no file for as long as the tab is open, a reload included. */
export function keepDrawings({ trace, document, notice }: Bench, storage: TextStorage): void {
  const here = () => document.api.getState().fleetId;
  const readHere = () => {
    const fleetId = here();
    if (trace.api.getState().loose[fleetId]) return;
    const found = drawingsIn(storage, keyOf(fleetId));
    if (found.length > 0) trace.api.setState(({ loose }) => ({ loose: { ...loose, [fleetId]: found } }));
  };
  readHere();
  document.api.subscribe((now, before) => {
    if (now.fleetId !== before.fleetId) readHere();
  });
  const write = (fleetId: string, list: readonly Laid[]) => {
    try {
      if (list.length > 0) storage.setItem(keyOf(fleetId), JSON.stringify(list));
      else storage.removeItem(keyOf(fleetId));
      notice.drop('drawing');
    } catch {
      notice.tell({
        about: 'drawing',
        tone: 'bad',
        text: 'The drawing is lost when this page is left: the browser has no room for it. Keep it in the file, or choose it again.',
      });
    }
  };
  const { loose } = trace.api.getState();
  for (const [fleetId, list] of Object.entries(loose)) write(fleetId, list);
  trace.api.subscribe((now, before) => {
    if (now.loose === before.loose) return;
    for (const [fleetId, list] of Object.entries(now.loose))
      if (list !== before.loose[fleetId]) write(fleetId, list);
  });
}

/** What is no drawing is passed over: it is the tab's own, and nobody else has written it. */
function drawingsIn(storage: TextStorage, key: string): readonly Laid[] {
  try {
    const json: unknown = JSON.parse(storage.getItem(key) ?? '[]');
    return Array.isArray(json) ? json.flatMap((each: unknown) => readDrawing(each) ?? []) : [];
  } catch {
    return [];
  }
}
