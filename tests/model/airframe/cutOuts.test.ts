import { describe, expect, test } from 'vitest';
import { massSum } from '../../../src/engine/mass/massProperties';
import { bodies } from '../../../src/model/airframe/bodies';
import { cutOuts } from '../../../src/model/airframe/cutOuts';
import { placeItem } from '../../../src/model/document/edit';
import { cutOutSvg } from '../../../src/model/fit/cutOutSvg';
import { benchOf, blockAt, box, partAt } from '../fit/fitAircraft';

const foam = blockAt('nose-block', box(200, 100, 50), [100, 0, 0], { cuttable: true, minimumWallMm: 25 });
const pack = partAt('pack', box(80, 40, 30), [120, 10, 20], { massG: 300 });
const aircraft = benchOf([foam], [pack]);

describe('a pack let into a foam block', () => {
  const [cut, ...more] = cutOuts(aircraft);

  test('depth, volume, mass and wall', () => {
    expect(more).toEqual([]);
    expect(cut).toMatchObject({ blockId: 'nose-block', partId: 'pack', wallTooThin: true });
    expect(cut!.volumeMm3).toBeCloseTo(80 * 40 * 20, 6);
    expect(cut!.depthMm).toBeCloseTo(20, 9);
    expect(cut!.massRemovedG).toBeCloseTo(64 * 0.03, 9);
    expect(cut!.wallLeftMm).toBeCloseTo(20, 9);
  });

  test('the sum is the block less the pocket, plus the pack', () => {
    const whole = massSum(bodies(aircraft).map(({ mass }) => mass));
    const [blockG, cutG] = [1000 * 0.03, 64 * 0.03];
    expect(whole.massG).toBeCloseTo(blockG - cutG + 300, 9);
    expect(whole.cgMm![0]).toBeCloseTo((blockG * 100 - cutG * 120 + 300 * 120) / whole.massG, 9);
    // The pocket's middle is at z = 15.
    expect(whole.cgMm![2]).toBeCloseTo((-cutG * 15 + 300 * 20) / whole.massG, 9);
  });

  test('the same bodies again while nothing moves, and the whole block once the pack is out of it', () => {
    expect(bodies(aircraft)[0]).toBe(bodies({ ...aircraft })[0]);
    const out = placeItem(aircraft, 'pack', [120, 10, 60]);
    expect(bodies(out)[0]!.mass.massG).toBeCloseTo(30, 9);
    expect(cutOuts(out)).toEqual([]);
  });

  test('a weighed pair of blocks: each loses its own, by its own density', () => {
    const pair = blockAt('cheek', box(100, 40, 40), [0, 60, 0], {
      cuttable: true,
      sides: 'both',
      mass: { by: 'weighed', massG: 16, leftMassG: 32 },
    });
    const servo = partAt('servo', box(20, 20, 20), [10, -60, 20]);
    const [left, ...others] = cutOuts(benchOf([pair], [servo]));
    expect(others).toEqual([]);
    expect(left!.pieceId).toBe('cheek.left');
    expect(left!.massRemovedG).toBeCloseTo((32 * 20 * 20 * 10) / (100 * 40 * 40), 9);
    expect(left!.massRemoved.cgMm?.[1]).toBeCloseTo(-60, 9);
  });

  test.each(['correct', 'replace'] as const)(
    'an airframe that was weighed (%s) has its pockets already, and a block goes off it with them',
    (use) => {
      const keel = blockAt('keel', box(400, 20, 20), [300, 0, -60], { mass: { by: 'weighed', massG: 500 } });
      const bench = {
        ...benchOf([foam, keel], [pack]),
        bareAirframe: { massG: 540, stationMm: 280, buttlineMm: 0, use },
      };
      const whole = massSum(bodies(bench).map(({ mass }) => mass));
      expect(whole.massG).toBeCloseTo(540 + 300, 9);
      expect(whole.cgMm![0]).toBeCloseTo((540 * 280 + 300 * 120) / 840, 9);
      // The foam without its pocket: 28.08 g about (30·100 − 1.92·120)/28.08.
      const off = massSum(
        bodies({ ...bench, structure: bench.structure.slice(1) }, bench).map(({ mass }) => mass),
      );
      expect(off.massG).toBeCloseTo(840 - 28.08, 9);
      expect(off.cgMm![0]).toBeCloseTo((540 * 280 + 300 * 120 - (3000 - 1.92 * 120)) / off.massG, 9);
    },
  );

  test('a block that is a skin loses no mass', () => {
    const shell = { ...foam, mass: { by: 'skin', gPerM2: 400 } } as const;
    expect(cutOuts(benchOf([shell], [pack]))[0]?.massRemovedG).toBe(0);
  });
});

describe('its template', () => {
  const svg = cutOutSvg(cutOuts(aircraft)[0]!);
  const numbers = (text: string) => text.split(/[ ,]/).map(Number);
  const pointsOf = (id: string) => numbers(new RegExp(`id="${id}"[^>]*points="([^"]*)"`).exec(svg)![1]!);
  const span = (values: number[], axis: 0 | 1) => {
    const along = values.filter((_, i) => i % 2 === axis);
    return Math.max(...along) - Math.min(...along);
  };

  test('is drawn 1:1: a user unit is a millimetre', () => {
    const [, width, height, viewBox] = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="([^"]*)"/.exec(svg)!;
    expect(numbers(viewBox!)).toEqual([0, 0, Number(width), Number(height)]);
  });

  test('shows the cut as large as the pack, the block’s face, and a ruler of 100 mm', () => {
    expect([span(pointsOf('cut'), 0), span(pointsOf('cut'), 1)]).toEqual([80, 40]);
    expect([span(pointsOf('face'), 0), span(pointsOf('face'), 1)]).toEqual([200, 100]);
    const [, x1, x2] = /id="ruler"><line x1="([\d.]+)"[^>]*x2="([\d.]+)"/.exec(svg)!;
    expect(Number(x2) - Number(x1)).toBe(100);
    expect(svg).toContain('20.0 mm deep');
  });

  test('names are escaped', () => {
    const odd = { ...cutOuts(aircraft)[0]!, partName: 'A & <B>' };
    expect(cutOutSvg(odd)).toContain('A &amp; &lt;B&gt;');
  });
});
