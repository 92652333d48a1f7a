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

/** Where a row's figures stand on the page, and what was written there last. */
interface Line {
  readonly mass: Element | null;
  readonly station: Element | null;
  readonly bar: HTMLElement | null;
  words: RowWords | null;
  barPct: number;
}

const lineOf = (row: Element): Line => ({
  mass: row.querySelector('[data-of=mass]'),
  station: row.querySelector('[data-of=station]'),
  bar: row.querySelector('.moment'),
  words: null,
  barPct: Number.NaN,
});

function writeWords(line: Line, words: RowWords): void {
  if (line.words === words) return;
  line.words = words;
  setText(line.mass, words.mass);
  setText(line.station, words.station);
}

/** A moment as a share of the largest, −1 to 1: to the left what pulls the nose down. The longest is half the row. */
function drawBar(line: Line, share: number): void {
  // To half a hundredth of the row, a pixel or two: finer steps would paint every row with each move.
  const pct = Math.round(share * 100) / 2;
  if (!line.bar || line.barPct === pct) return;
  line.barPct = pct;
  // A stretch of the ground: painting it anew lays nothing out again.
  const long = Math.abs(pct) / 100;
  const fromLeft = 0.5 + Math.min(0, pct / 100);
  line.bar.style.setProperty('--moment-from', `${(100 * fromLeft) / (1 - long)}%`);
  line.bar.style.setProperty('--moment-long', `${100 * long}%`);
}

/**
 * Writes each row's mass and station as they are now, drag and all, and draws its share of the moment about the CG
 * along its foot; by hand, so that a drag renders no rows.
 */
export function RowFigures() {
  const here = useRef<HTMLSpanElement>(null);
  const say = useReadings();
  const lines = useRef<ReadonlyMap<string, Line>>(new Map());
  // The rows are made and dropped with the table, which renders this too.
  useLayoutEffect(() => {
    const found = here.current?.parentElement?.querySelectorAll<HTMLElement>('tr[data-item]') ?? [];
    lines.current = new Map([...found].map((row) => [row.dataset.item ?? '', lineOf(row)]));
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
      writeWords(line, wordsOf(row, say, liquids.get(row.id) ?? 0));
      drawBar(line, (moments.get(row.id) ?? 0) / most);
    }
  });
  return <span ref={here} hidden />;
}
