import { describe, expect, test } from 'vitest';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import { placeItem } from '../../../src/model/document/edit';
import type { Aircraft } from '../../../src/model/document/types';
import { CERTAIN_MM } from '../../../src/model/loads/certain';
import { balancedState, headerFraction, keepBetween } from '../../../src/model/sheet/balancing';
import type { Block, Row } from '../../../src/model/sheet/blocks';
import { FIRST_CHOICES } from '../../../src/model/sheet/choices';
import type { Shape } from '../../../src/model/sheet/drawing';
import { leadingEdgeAt } from '../../../src/model/sheet/leadingEdge';
import { numbered } from '../../../src/model/sheet/numbered';
import { packShifts } from '../../../src/model/sheet/packShifts';
import { bodyOf, PAPERS, papers } from '../../../src/model/sheet/paper';
import { buildSheet } from '../../../src/model/sheet/sheet';
import { cgOf, demo, NAMES } from '../../demo/demoAircraft';
import { inputOf } from './sheetOf';

const judgementOf = (aircraft: Aircraft) => inputOf(aircraft).judgement;

const tableOf = (blocks: readonly Block[], id: string): readonly Row[] => {
  const table = blocks.find((block) => block.kind === 'table' && block.id === id);
  return table?.kind === 'table' ? table.rows : [];
};
const figure = (text: string) => Number(text.replace('−', '-').replace(/[^\d.-]/g, ''));
const flat = (shapes: readonly Shape[]): readonly Shape[] =>
  shapes.flatMap((shape) => (shape.kind === 'window' ? flat(shape.shapes) : [shape]));

describe.each(NAMES)('%s', (name) => {
  const aircraft = demo(name);

  test.each(PAPERS)(
    'on %s every part and tank has its number, its row, and a label in each of the three views',
    (paper) => {
      const sheet = buildSheet(
        inputOf(aircraft, {
          from: 1,
          more: {
            paper: papers[paper],
            leftOut: ['cg', 'weighing', 'checks', 'card', 'templates', 'fitting'],
          },
        }),
      );
      const of = (id: string) => sheet.sections.find((section) => section.id === id)!.blocks;
      const rows = tableOf(of('parts'), 'parts');
      const items = [...aircraft.tanks, ...aircraft.parts];
      expect(rows.map(({ id }) => id).sort()).toEqual(items.map(({ id }) => id).sort());
      expect(rows.map(({ cells }) => cells[0]?.text)).toEqual(rows.map((_, at) => String(at + 1)));
      const body = bodyOf(papers[paper], sheet.banner !== null);
      const drawings = of('drawings').flatMap((block) => (block.kind === 'drawing' ? [block.drawing] : []));
      for (const view of ['side', 'top', 'front']) {
        const mine = drawings.filter(({ id }) => id.startsWith(view));
        const labelled = mine
          .flatMap(({ shapes }) => flat(shapes))
          .flatMap((shape) => ('of' in shape && shape.of?.startsWith('number ') ? [shape.of.slice(7)] : []));
        expect(labelled.sort(), view).toEqual(items.map(({ id }) => id).sort());
        for (const { wideMm, highMm } of mine) {
          expect(wideMm).toBeLessThanOrEqual(body.wideMm + 1e-9);
          expect(highMm).toBeLessThanOrEqual(body.highMm);
        }
      }
    },
  );

  test('the figures of the table are the engine’s, from the reference point', () => {
    const input = inputOf(aircraft, {
      from: 1,
      more: { leftOut: ['drawings', 'cg', 'weighing', 'checks', 'card', 'templates', 'fitting'] },
    });
    const rows = tableOf(buildSheet(input).sections[0]!.blocks, 'parts');
    const bodies = new Map(input.shown.bodies.map((each) => [each.sourceId, each.mass]));
    const fromMm = aircraft.referencePoints[1]!.positionMm[0];
    for (const { id, cells } of rows) {
      const mass = bodies.get(id);
      if (!mass?.cgMm) continue;
      expect(Math.abs(figure(cells[4]!.text) - (mass.cgMm[0] - fromMm))).toBeLessThanOrEqual(0.0501);
      expect(Math.abs(figure(cells[5]!.text) - mass.cgMm[1])).toBeLessThanOrEqual(0.0501);
      expect(Math.abs(figure(cells[6]!.text) - mass.cgMm[2])).toBeLessThanOrEqual(0.0501);
      expect(Math.abs(figure(cells[2]!.text) - mass.massG)).toBeLessThanOrEqual(0.501);
    }
  });

  test('a label’s leader begins where its part’s CG lies, to scale: two parts are as far apart as they are, divided by the scale', () => {
    const input = inputOf(aircraft, {
      more: { leftOut: ['parts', 'cg', 'weighing', 'checks', 'card', 'templates', 'fitting'] },
    });
    const blocks = buildSheet(input).sections[0]!.blocks;
    let looked = 0;
    blocks.forEach((block, at) => {
      if (block.kind !== 'drawing' || !block.drawing.id.startsWith('side')) return;
      const before = blocks[at - 1];
      const scale = Number(before?.kind === 'heading' ? /1:([\d.]+)/.exec(before.text)?.[1] : Number.NaN);
      const ends = flat(block.drawing.shapes).flatMap((shape) =>
        shape.kind === 'polyline' && shape.of?.startsWith('leader ')
          ? [{ id: shape.of.slice(7), at: shape.points[0]! }]
          : [],
      );
      const cgOfId = new Map(numbered(aircraft).map(({ id, cgMm }) => [id, cgMm]));
      const [first, ...others] = ends;
      for (const other of others) {
        const [a, b] = [cgOfId.get(first!.id)!, cgOfId.get(other.id)!];
        expect((other.at[0] - first!.at[0]) * scale).toBeCloseTo(b[0] - a[0], 6);
        expect((other.at[1] - first!.at[1]) * scale).toBeCloseTo(a[2] - b[2], 6);
        looked += 1;
      }
    });
    expect(looked).toBeGreaterThan(5);
  });

  test('a pack moved as far as it may is still kept, and a little farther is not', () => {
    const input = inputOf(aircraft);
    const { shown } = input;
    for (const { id, allowed } of packShifts(aircraft, shown, LEVEL)) {
      if (!allowed || allowed.aftMm < 0 || allowed.forwardMm < 0) continue;
      const pack = numbered(aircraft).find((each) => each.id === id)!.item;
      const [x, y, z] = pack.positionMm;
      const moved = (by: number): Aircraft => placeItem(aircraft, id, [x + by, y, z]);
      const out = (by: number) => {
        const { aftmost, foremost } = judgementOf(moved(by));
        return Math.max(aftmost?.outsideMm ?? 0, -(foremost?.outsideMm ?? 0));
      };
      if (allowed.aftMm < 2000) {
        expect(out(allowed.aftMm - 0.05)).toBeLessThanOrEqual(1e-6);
        // What the load states are certain to is held against the aft end: so much farther is surely out.
        expect(out(allowed.aftMm + 60)).toBeGreaterThan(0);
      }
      if (allowed.forwardMm < 2000) {
        // Forward, the safe side, counts as certain to the same 0.1 mm.
        expect(out(-allowed.forwardMm + 0.05)).toBeLessThanOrEqual(CERTAIN_MM);
        expect(out(-allowed.forwardMm - 60)).toBeGreaterThan(0);
      }
    }
  });
});

test('the header tank’s share of the usable fuel, and the CG there, by hand', () => {
  const full = balanceAt(demo('sandmartin'), { fuelFraction: 1, down: LEVEL }).liquids;
  // Started with whole millilitres, a little less than they hold, so that the sum is one of stated figures.
  const startMl = (id: string) => Math.floor(0.9 * full.find(({ tankId }) => tankId === id)!.volumeMl);
  const aircraft: Aircraft = {
    ...demo('sandmartin'),
    tanks: demo('sandmartin').tanks.map((tank) => ({ ...tank, startMl: startMl(tank.id) })),
  };
  const { tanks } = aircraft;
  const usable = tanks.map(({ id, unusableMl }) => startMl(id) - unusableMl);
  const header = tanks.findIndex(({ id }) => tanks.some(({ feeds }) => feeds === id));
  const sum = usable.reduce((a, b) => a + b, 0);
  expect(headerFraction(aircraft)).toBeCloseTo(usable[header]! / sum, 9);
  const fraction = headerFraction(aircraft)!;
  const { liquids } = balanceAt(aircraft, { fuelFraction: fraction, down: LEVEL });
  for (const { tankId, volumeMl } of liquids) {
    const tank = tanks.find(({ id }) => id === tankId)!;
    const isHeader = tankId === tanks[header]!.id;
    expect(volumeMl, tankId).toBeCloseTo(isHeader ? startMl(tankId) : tank.unusableMl, 3);
  }
});

test('a lump of lead that brings the balance to either end of what is allowed brings the worst state to its limit', () => {
  const aircraft = demo('sandmartin');
  const input = inputOf(aircraft);
  const balanced = balancedState(aircraft, FIRST_CHOICES.balancing);
  const keep = keepBetween(aircraft, input.shown, balanced)!;
  const { band } = input.judgement;
  const margin = (momentGmm: number) => {
    // A couple: 100 g taken from one place and put down at another, the same in every load state.
    const lead = (id: string, stationMm: number) => ({
      id,
      name: id,
      role: 'other' as const,
      shape: { kind: 'box' as const, lengthMm: 1, widthMm: 1, heightMm: 1 },
      massG: 50,
      positionMm: [stationMm, 0, 0] as const,
      yawDeg: 0,
      pitchDeg: 0,
      rollDeg: 0,
      inTheOpen: true,
    });
    const apart = momentGmm / 50;
    const pair = (by: number): Aircraft => ({
      ...aircraft,
      parts: [...aircraft.parts, lead('a', 760), lead('b', 760 + by)],
    });
    const with0 = judgementOf(pair(0));
    const withIt = judgementOf(pair(apart));
    return { with0, withIt };
  };
  // Moved aft by as much as is allowed at the balance point, taken times the mass there.
  const moment = (keep.toMm - cgOf(balanced.balance)[0]) * balanced.balance.massG;
  const { with0, withIt } = margin(moment);
  const shift = withIt.aftmost!.cgMm[0] - with0.aftmost!.cgMm[0];
  const roomAft = band!.aftMm - input.judgement.aftmost!.cgMm[0];
  // 100 g of lead make the aircraft heavier by 1.5 %, so the shift is as much smaller.
  expect(shift).toBeGreaterThan(0.96 * (roomAft - 0.25));
  expect(shift).toBeLessThanOrEqual(roomAft);
});

test('the leading edge of a swept panel by the rule of three', () => {
  const aircraft = demo('fieldfare');
  const wing = aircraft.structure.find((each) => each.kind === 'surface' && each.role === 'wing')!;
  if (wing.kind !== 'surface') throw new Error('no wing');
  const [x, y] = wing.rootMm;
  const panel = wing.panels[0]!;
  const halfway = leadingEdgeAt(aircraft, y + panel.spanMm / 2);
  // Without incidence the edge goes straight from the root to the tip.
  expect(wing.incidenceDeg).toBe(0);
  expect(halfway?.stationMm).toBeCloseTo(x + panel.sweepMm / 2, 6);
  expect(halfway?.chordMm).toBeCloseTo((wing.rootChordMm + panel.tipChordMm) / 2, 6);
  expect(leadingEdgeAt(aircraft, 1e5)).toBeNull();
});
