import { describe, expect, test } from 'vitest';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import { blankAircraft } from '../../../src/model/document/blank';
import type { Aircraft, MassFrom } from '../../../src/model/document/types';
import { chooseVariant } from '../../../src/model/document/variants';
import { judgeFully } from '../../../src/model/judgement/judgeFully';
import { balancedState, keepBetween } from '../../../src/model/sheet/balancing';
import { bannerOf } from '../../../src/model/sheet/blocking';
import type { Block, Row, SectionId } from '../../../src/model/sheet/blocks';
import { SECTIONS } from '../../../src/model/sheet/blocks';
import { FIRST_CHOICES } from '../../../src/model/sheet/choices';
import { buildSheet, type SheetInput } from '../../../src/model/sheet/sheet';
import { cgOf, demo, withPartAt } from '../../demo/demoAircraft';
import { aircraftOf, boxBlock, boxPart } from '../aircraft';
import { inputOf } from './sheetOf';

/** A sheet of one section. */
const only = (
  id: SectionId,
  aircraft: Aircraft,
  more: Partial<SheetInput> = {},
  judgement?: SheetInput['judgement'],
) =>
  buildSheet(
    inputOf(aircraft, {
      ...(judgement && { judgement }),
      more: { leftOut: SECTIONS.filter((each) => each !== id), ...more },
    }),
  );
const blocksOf = (sheet: ReturnType<typeof buildSheet>): readonly Block[] => sheet.sections[0]!.blocks;
const rowsOf = (blocks: readonly Block[], id: string): readonly Row[] =>
  blocks.flatMap((block) => (block.kind === 'table' && block.id === id ? block.rows : []));
const textsOf = (blocks: readonly Block[]): readonly string[] =>
  blocks.flatMap((block) => (block.kind === 'text' || block.kind === 'heading' ? [block.text] : []));
const figure = (text: string) => Number(text.replace('−', '-').replace(/[^\d.-]/g, ''));

test('a sheet of a variant has its name, and its page of the CG says what the wiring says', () => {
  const day = only('cg', demo('whimbrel'));
  expect(day.name).toBe(`${demo('whimbrel').name}, Day`);
  const aircraft = chooseVariant(demo('whimbrel'), 'long-range');
  const sheet = only('cg', aircraft, {}, judgeFully(aircraft, { down: LEVEL, estimate: null }));
  expect(sheet.name).toBe(`${aircraft.name}, Long range`);
  expect(sheet.banner).toMatch(/wiring/);
  const lead = blocksOf(sheet).find((block) => block.kind === 'text' && block.role === 'lead');
  expect(lead?.kind === 'text' && lead.text).toMatch(/wiring does not hold|^Do not fly/);
});

test('a revision is named as what came before', () => {
  expect(only('card', demo('corncrake'), { revision: 'Maiden' }).name).toBe(
    `${demo('corncrake').name}, after revision “Maiden”`,
  );
});

test('the letter beside a mass is that of its source, the bare airframe’s too', () => {
  const letters: Readonly<Record<MassFrom, string>> = {
    weighed: 'W',
    measured: 'F',
    typical: 'T',
    assumed: 'A',
    unknown: 'U',
  };
  const sources = Object.keys(letters) as readonly MassFrom[];
  const parts = [
    ...sources.map((massFrom, at) => ({ ...boxPart(massFrom, 10, [at * 200, 0, 0]), massFrom })),
    boxPart('nobody', 10, [-200, 0, 0]),
  ];
  const structure = [boxBlock('shell', [0, 0, 0], { by: 'foam', gPerMl: 0.03 })];
  const blocks = blocksOf(only('parts', aircraftOf(structure, parts)));
  const letterOf = (table: string, id: string) => rowsOf(blocks, table).find((row) => row.id === id)?.cells;
  for (const source of sources) expect(letterOf('parts', source)?.[3]?.text).toBe(letters[source]);
  expect(letterOf('parts', 'nobody')?.[3]?.text).toBe('N');
  expect(letterOf('airframe', 'shell')?.[2]?.text).toBe('A');
  // The letters stand on the form for the scales too, and mean nothing without their key.
  expect(textsOf(blocksOf(only('weighing', aircraftOf(structure, parts)))).join(' ')).toMatch(
    /From: W weighed; F found from a weighing; /,
  );
  const bare: Aircraft = {
    ...aircraftOf(structure, parts),
    bareAirframe: { massG: 100, stationMm: 0, buttlineMm: 0, use: 'replace', massFrom: 'typical' },
  };
  const [row] = rowsOf(blocksOf(only('parts', bare)), 'airframe').filter(({ cells }) =>
    /bare/i.test(cells[0]!.text),
  );
  expect(row?.cells[2]?.text).toBe('T');
});

test('the tables add up: every mass and its moment, by hand, to the mass and the CG of the bench', () => {
  // Nothing in tanks, so the tables hold all there is.
  const aircraft = demo('whimbrel');
  const blocks = blocksOf(only('parts', aircraft));
  const lines = [
    ...rowsOf(blocks, 'parts').map(({ cells }) => [cells[2]!, cells[4]!]),
    ...rowsOf(blocks, 'airframe')
      .filter(({ cells }) => cells.at(-1)?.text === '')
      .map(({ cells }) => [cells[1]!, cells[3]!]),
    ...rowsOf(blocks, 'leads').map(({ cells }) => [cells[3]!, cells[4]!]),
  ].map((cells) => cells.map(({ text }) => figure(text)) as [massG: number, stationMm: number]);
  expect(lines.length).toBe(
    aircraft.parts.length + aircraft.structure.length + (aircraft.leads ?? []).length,
  );
  const massG = lines.reduce((sum, [mass]) => sum + mass, 0);
  const stationMm = lines.reduce((sum, [mass, station]) => sum + mass * station, 0) / massG;
  const balance = balanceAt(aircraft, { fuelFraction: 0, down: LEVEL });
  // A rounded figure is off by 1/√12 of its step on the mean: three times that for all of them together.
  const sigma = 1 / Math.sqrt(12);
  expect(Math.abs(massG - balance.massG)).toBeLessThan(3 * sigma * Math.sqrt(lines.length));
  const arm = Math.hypot(...lines.map(([, station]) => station - stationMm));
  expect(Math.abs(stationMm - cgOf(balance)[0])).toBeLessThan((3 * sigma * arm) / massG + 0.1);
});

test('with more load states than are looked at one by one, where it may balance still keeps the band in all of them', () => {
  // Five parts of 40 g at station 900 that may be left behind, 1000 g at 500: 32 load states, by hand.
  const names = ['a', 'b', 'c', 'd', 'e'];
  const aircraft: Aircraft = {
    ...aircraftOf(
      [boxBlock('frame', [500, 0, 0], { by: 'weighed', massG: 1000 })],
      names.map((id) => boxPart(id, 40, [900, 0, 0])),
    ),
    targetBand: { by: 'station', forwardMm: 490, aftMm: 580 },
    switches: names.map((id) => ({
      id: `${id}-aboard`,
      name: id,
      positions: [
        { id: 'on', name: 'on' },
        { id: 'off', name: 'off', without: [id] },
      ],
    })),
  };
  const balanced = balancedState(aircraft, FIRST_CHOICES.balancing);
  const keep = keepBetween(aircraft, balanceAt(aircraft, { fuelFraction: 1, down: LEVEL }), balanced)!;
  const cg = (count: number) => (1000 * 500 + 40 * count * 900) / (1000 + 40 * count);
  const ends = names
    .map((_, at) => at)
    .concat(5)
    .map((count) => {
      const share = (1000 + 40 * count) / 1200;
      return [cg(5) + (490 - cg(count)) * share, cg(5) + (580 - cg(count)) * share] as const;
    });
  expect(keep.fromMm).toBeCloseTo(Math.max(...ends.map(([from]) => from)), 6);
  expect(keep.toMm).toBeCloseTo(Math.min(...ends.map(([, to]) => to)), 6);
});

describe('what a sheet must own up to', () => {
  test('the fuel on the bench that the mass ready to fly is that of', () => {
    const aircraft = demo('sandmartin');
    const shown = balanceAt(aircraft, { fuelFraction: 0.4, down: LEVEL });
    const rows = rowsOf(blocksOf(only('cg', aircraft, { shown })), 'facts');
    expect(rows.find(({ id }) => id === 'mass')?.cells[2]?.text).toBe('40 % fuel');
  });

  test('a bench that is not level', () => {
    const tilted = only('cg', demo('sandmartin'), { held: '30° climb' });
    expect(textsOf(blocksOf(tilted)).join(' ')).toMatch(/Not level: .*30° climb/);
    const drawn = only('drawings', demo('sandmartin'), { held: '30° climb' });
    expect(
      textsOf(blocksOf(drawn)).filter((text) => text.includes('CG full; diamond: CG dry (30° climb')),
    ).toHaveLength(3);
    expect(textsOf(blocksOf(only('cg', demo('sandmartin')))).join(' ')).not.toMatch(/Not level/);
  });

  test('limits that were stated for one load state', () => {
    const plain = demo('sandmartin');
    const aircraft: Aircraft = {
      ...plain,
      targetBand: { ...plain.targetBand!, statedFor: { fuelPct: 0, switches: [] } },
    };
    const said = textsOf(blocksOf(only('cg', aircraft))).join(' ');
    expect(said).toMatch(/in the load state that the limits were stated for \(tanks dry\)/);
    expect(said).not.toMatch(/keeps the band, and the margin asked for, in every load state/);
  });

  test('what is not checked yet, so that the headline is no approval', () => {
    const judgement = inputOf(demo('sandmartin')).judgement;
    const pending = { ...judgement, findings: [{ kind: 'fit-unchecked', severity: 'unknown' } as const] };
    const [, lead] = textsOf(blocksOf(only('cg', demo('sandmartin'), {}, pending)));
    expect(lead).toMatch(/^In the band.*, as far as it is checked$/);
  });

  test('a neutral point that is an estimate makes the band one, at the foot of every page', () => {
    const judgement = inputOf(demo('sandmartin')).judgement;
    const estimated = { ...judgement, band: { ...judgement.band!, from: 'estimate' as const } };
    expect(only('card', demo('sandmartin'), {}, estimated).note).toMatch(/^The band is an estimate\./);
    expect(only('card', demo('sandmartin')).note).not.toMatch(/estimate/);
  });
});

test('a load state that is tail-heavy all along says so once, by its farther end', () => {
  const aircraft = withPartAt(demo('sandmartin'), 'flight-pack', [1600, 0, 0]);
  const rows = rowsOf(blocksOf(only('cg', aircraft)), 'states');
  expect(rows.length).toBeGreaterThan(1);
  for (const { cells } of rows) expect(cells.at(-1)?.text).toMatch(/^\d+\smm aft$/);
});

test('wheels up, the form for the scales does not let it stand on them', () => {
  const aircraft = demo('fieldfare');
  const rows = (choice: SheetInput['choice']) =>
    rowsOf(blocksOf(only('weighing', aircraft, { choice })), 'scales').filter(({ id }) => id !== 'sum');
  const down = rows({ fuel: null, positions: {} });
  expect(down).toHaveLength(3);
  expect(down.every(({ cells }) => Number.isFinite(figure(cells[3]!.text)))).toBe(true);
  const up = rows({ fuel: null, positions: { undercarriage: 'up' } });
  expect(up.map(({ cells }) => cells[0]!.text)).toEqual(['Front support', 'Rear support']);
  expect(up.map(({ cells }) => cells[3]!.text)).toEqual(['–', '–']);
});

test('an empty bench and names of any length read as sentences, and fit their line', () => {
  for (const id of ['cg', 'checks', 'card', 'weighing'] as const) {
    const words = JSON.stringify(
      buildSheet(inputOf(blankAircraft(), { more: { leftOut: SECTIONS.filter((each) => each !== id) } })),
    );
    expect(words, id).not.toMatch(/[.:;,]\s?\.|: [A-Z][^“”]*: [A-Z]/);
  }
  const long = 'W'.repeat(200);
  expect(bannerOf([`the mass of ${long} is not known`, long])!.length).toBeLessThan(170);
  expect(bannerOf(['tail-heavy by 12 mm, tanks dry', 'the wiring does not hold: 1 fault'])).toBe(
    'Not ready to fly: tail-heavy by 12 mm, tanks dry; the wiring does not hold: 1 fault',
  );
});

test('a reference point far from the aircraft is said to be off the drawing, not drawn off the paper', () => {
  const plain = demo('sandmartin');
  const aircraft: Aircraft = {
    ...plain,
    referencePoints: [{ id: 'far', name: 'Bench stop', positionMm: [-2000, 0, 0] }, ...plain.referencePoints],
  };
  const blocksFrom = (from: number) =>
    blocksOf(
      buildSheet(
        inputOf(aircraft, { from, more: { leftOut: SECTIONS.filter((each) => each !== 'drawings') } }),
      ),
    );
  const side = (from: number) =>
    blocksFrom(from).flatMap((block) =>
      block.kind === 'drawing' && block.drawing.id === 'side-0' ? [block.drawing] : [],
    )[0]!;
  const origins = (from: number) =>
    side(from).shapes.flatMap((shape) =>
      shape.kind === 'circle' && shape.of === 'origin' ? [shape.at[0]] : [],
    );
  expect(origins(1)).toHaveLength(1);
  expect(origins(0)).toEqual([]);
  expect(textsOf(blocksFrom(0)).join(' ')).toMatch(/counted from lies off the drawing/);
});
