import { useLayoutEffect, useRef } from 'react';
import { lastPerObject } from '../../engine/memory/memory';
import { type ManifestRow, manifestRows } from '../../model/words/manifestRows';
import { weightsAlong } from '../beam/weights';
import { setText } from '../drawing';
import { type Readings, useReadings } from '../readings';
import { useDrawn } from '../useDrawn';
import { momentAbout } from './order';

interface RowWords {
  readonly mass: string;
  readonly station: string;
}

/** Kept with the row, which stays the very same while its thing does: only what is in hand is worded anew. */
const wordsOf = lastPerObject(
  (row: ManifestRow, say: Readings, liquidG: number): RowWords => ({
    mass: say.massFigure(row.massG + liquidG),
    station: row.cgMm ? say.stationFigure(row.cgMm[0]) : '–',
  }),
);

/** To the tenth of a per cent of the row. */
const percent = (share: number) => `${Math.round(share * 1000) / 10}%`;

/** A moment as a share of the largest, −1 to 1: to the left what pulls the nose down. The longest is half the row. */
function drawBar(bar: Element | null | undefined, share: number): void {
  if (!(bar instanceof HTMLElement)) return;
  const [left, width] = [percent(0.5 + Math.min(0, share) / 2), percent(Math.abs(share) / 2)];
  if (bar.style.left !== left) bar.style.left = left;
  if (bar.style.width !== width) bar.style.width = width;
}

/**
 * Writes each row's mass and station as they are now, drag and all, and draws its share of the moment about the CG
 * along its foot; by hand, so that a drag renders no rows.
 */
export function RowFigures() {
  const here = useRef<HTMLSpanElement>(null);
  const say = useReadings();
  const lines = useRef<ReadonlyMap<string, HTMLElement>>(new Map());
  // The rows are made and dropped with the table, which renders this too.
  useLayoutEffect(() => {
    const found = here.current?.parentElement?.querySelectorAll<HTMLElement>('tr[data-item]') ?? [];
    lines.current = new Map([...found].map((line) => [line.dataset.item ?? '', line]));
  });
  useDrawn(({ balance, document }) => {
    const answer = balance.get();
    const cgMm = answer.cgMm?.[0] ?? null;
    const moments = new Map(
      weightsAlong(answer, 0).map(({ sourceId, massG, atMm }) => [sourceId, momentAbout(massG, atMm, cgMm)]),
    );
    const most = Math.max(1e-9, ...[...moments.values()].map(Math.abs));
    const liquids = new Map(answer.liquids.map(({ tankId, mass }) => [tankId, mass.massG]));
    for (const row of manifestRows(document.current())) {
      const line = lines.current.get(row.id);
      if (!line) continue;
      const words = wordsOf(row, say, liquids.get(row.id) ?? 0);
      const [, mass, station] = line.children;
      setText(mass?.firstElementChild, words.mass);
      setText(station?.firstElementChild, words.station);
      drawBar(station?.lastElementChild?.firstElementChild, (moments.get(row.id) ?? 0) / most);
    }
  });
  return <span ref={here} hidden />;
}
