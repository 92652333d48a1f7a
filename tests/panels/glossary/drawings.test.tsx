import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test } from 'vitest';
import { glossary } from '../../../src/model/glossary/glossary';
import { drawings } from '../../../src/panels/glossary/drawings/drawings';
import {
  inertiaTimes,
  marginPct,
  marginShown,
  planformOf,
  seeSaw,
  seeSawCgMm,
  straight,
  swept,
  trapezoid,
} from '../../../src/panels/glossary/drawings/figures';
import { HIGH, WIDE } from '../../../src/panels/glossary/drawings/pencil';

const markupOf = (id: keyof typeof drawings) => renderToStaticMarkup(drawings[id]());

describe('the drawings of the glossary', () => {
  test.each(glossary.map(({ id }) => id))('%s has one, says what it shows, and keeps to its sheet', (id) => {
    const svg = markupOf(id);
    expect(svg).toMatch(/role="img" aria-label="[A-Z][^"]{20,}"/);
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
    // Letters of 13 px are some 6.6 px wide each: words must not run over the edge of the sheet.
    const uprights = [...svg.matchAll(/<line x1="([\d.]+)" y1="([\d.]+)" x2="([\d.]+)" y2="([\d.]+)"/g)]
      .map((line) => line.slice(1).map(Number) as [number, number, number, number])
      .filter(([x1, , x2]) => x1 === x2);
    for (const [, tag = '', text = ''] of svg.matchAll(/<text ([^>]*)>([^<]*)<\/text>/g)) {
      if (svg.includes('<g transform')) continue;
      const at = (name: string) => Number(new RegExp(`${name}="([^"]*)"`).exec(tag)?.[1]);
      const anchor = /text-anchor="(\w+)"/.exec(tag)?.[1];
      const wide = text.length * 6.6;
      const left = at(' ?x') - (anchor === 'end' ? wide : anchor === 'middle' ? wide / 2 : 0);
      expect(left, text).toBeGreaterThanOrEqual(4);
      expect(left + wide, text).toBeLessThanOrEqual(WIDE - 4);
      // No line goes through a word.
      for (const [x, y1, , y2] of uprights)
        expect(
          x > left + 3 &&
            x < left + wide - 3 &&
            Math.min(y1, y2) < at('y') - 1 &&
            Math.max(y1, y2) > at('y') - 8,
          `${text}, line at ${x}`,
        ).toBe(false);
      expect(at('y'), text).toBeLessThanOrEqual(HIGH - 2);
      expect(at('y'), text).toBeGreaterThanOrEqual(11);
    }
  });

  // Closed forms of the straight-tapered wing; Raymer, Aircraft Design, ch. 4 (from memory).
  test.each([
    ['the wing of the MAC', trapezoid],
    ['the straight wing', straight],
    ['the swept wing', swept],
  ])('%s has its MAC by the closed form', (_, wing) => {
    const { rootChordMm: root, tipChordMm: tip, spanMm, sweepMm } = wing;
    const taper = tip / root;
    const mac = ((2 / 3) * root * (1 + taper + taper ** 2)) / (1 + taper);
    const out = ((spanMm / 3) * (1 + 2 * taper)) / (1 + taper);
    const drawn = planformOf(wing);
    expect(drawn.macMm).toBeCloseTo(mac, 9);
    expect(drawn.macButtlineMm).toBeCloseTo(out, 9);
    expect(drawn.lemacMm).toBeCloseTo((out / spanMm) * sweepMm, 9);
    expect(tip).toBeLessThan(root);
  });

  // Level turn: the lift's upright part, cos of the bank, carries the weight; any textbook of flight (from memory).
  test('the load factor drawn is that of the bank drawn', () => {
    const [, g = '', bank = ''] = /(\d+) g at (\d+)°/.exec(markupOf('load-factor')) ?? [];
    expect(Number(g) * Math.cos((Number(bank) * Math.PI) / 180)).toBeCloseTo(1, 9);
  });

  test('what is written on the drawings is what is worked out', () => {
    const { rootChordMm: root, tipChordMm: tip } = trapezoid;
    const mac = (2 / 3) * (root + tip - (root * tip) / (root + tip));
    expect(markupOf('mac')).toContain(`MAC ${Math.round(mac)} mm`);
    const { neutralPointMm, cgMm, macMm } = marginShown;
    expect(marginPct()).toBeCloseTo((100 * (neutralPointMm - cgMm)) / macMm, 12);
    expect(markupOf('margin')).toContain(
      `${(((neutralPointMm - cgMm) / macMm) * 100).toFixed(1)} % of the MAC`,
    );
    // The lever: both moments about the balance point are alike.
    const { left, right } = seeSaw;
    const cg = (left.massG * left.atMm + right.massG * right.atMm) / (left.massG + right.massG);
    expect(seeSawCgMm()).toBeCloseTo(cg, 12);
    expect(left.massG * (cg - left.atMm)).toBeCloseTo(right.massG * (right.atMm - cg), 9);
    expect(markupOf('moment')).toContain(`${left.massG} × ${cg - left.atMm}`);
    // r²: point masses, so exact.
    expect(inertiaTimes(2)).toBeCloseTo(4, 12);
    expect(markupOf('inertia')).toContain('4 ×');
  });
});
