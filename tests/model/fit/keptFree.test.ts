import { describe, expect, test } from 'vitest';
import { placeItem, updatePart } from '../../../src/model/document/edit';
import type { Aircraft } from '../../../src/model/document/types';
import { wholeFit } from '../../../src/model/fit/wholeFit';
import { benchOf, box, partAt, squareHull } from './fitAircraft';

/** From station 400 to 460, over the whole of the hull's width and height. */
const zone = { id: 'pipe', name: 'Tail pipe', positionMm: [430, 0, 0] as const };
const sized = { ...zone, lengthMm: 60, widthMm: 200, heightMm: 200 };
const lead = { ...partAt('lead', box(20, 10, 10), [385, 0, 0]), role: 'ballast' as const };
const bench: Aircraft = { ...benchOf([squareHull], [lead]), ballastFree: [sized] };
const kept = (aircraft: Aircraft) => wholeFit(aircraft).problems.filter(({ kind }) => kind === 'keptFree');

describe('a zone kept free of ballast', () => {
  test('ballast beside it is well; one that reaches in is told, by how much, and what clears it', () => {
    expect(kept(bench)).toEqual([]);
    const [problem, ...others] = kept(placeItem(bench, 'lead', [397, 0, 0]));
    expect(others).toEqual([]);
    expect(problem).toMatchObject({ severity: 'caution', parties: [{ id: 'lead' }, { id: 'pipe' }] });
    // Its rear face stands at 397 + 10, the zone begins at 400.
    expect(problem?.byMm).toBeCloseTo(7, 6);
    expect(problem?.clearByMm?.[0]).toBeCloseTo(-7, 6);
  });

  test('only ballast is kept out, and the zone itself is not at fault', () => {
    const inside = placeItem(bench, 'lead', [430, 0, 0]);
    expect(wholeFit(inside).byId.has('lead')).toBe(true);
    expect(wholeFit(inside).byId.has('pipe')).toBe(false);
    expect(kept(updatePart(inside, 'lead', { role: 'energy' }))).toEqual([]);
  });

  test('a zone that is moved is judged anew', () => {
    const moved = { ...bench, ballastFree: [{ ...sized, positionMm: [400, 0, 0] as const }] };
    expect(kept(bench)).toEqual([]);
    expect(kept(moved)).toHaveLength(1);
  });
});
