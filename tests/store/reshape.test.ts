import { expect, test } from 'vitest';
import { structureById } from '../../src/model/document/edit';
import type { Surface } from '../../src/model/document/types';
import { createBench } from '../../src/store/bench';
import { aircraftOf, boxPart } from '../model/aircraft';
import { surface } from '../model/surface';

const wing = surface({ id: 'wing', spanMm: 600, rootChordMm: 200, tipChordMm: 200 });
const swept = (sweepMm: number): Surface => ({ ...wing, panels: [{ ...wing.panels[0]!, sweepMm }] });
const bench = () => createBench(aircraftOf([wing], [boxPart('pack', 300, [500, 0, 0])]));

test('moves are previews, and letting go makes one step that undo takes back', () => {
  const { document, reshape } = bench();
  const before = document.api.getState().committed;
  expect(reshape.pickUp('wing')).toBe(structureById(before, 'wing'));
  reshape.show(swept(20));
  reshape.show(swept(40));
  expect(document.api.getState()).toMatchObject({ committed: before, past: [] });
  expect(structureById(document.current(), 'wing')).toEqual(swept(40));
  reshape.setDown('Sweep Wing');
  expect(document.api.getState()).toMatchObject({ preview: null, past: [{ label: 'Sweep Wing' }] });
  document.undo();
  expect(document.current()).toBe(before);
});

test('cancel puts all as it was; a piece let go where it was taken is no step', () => {
  const { document, reshape } = bench();
  const before = document.current();
  reshape.pickUp('wing');
  reshape.show(swept(40));
  reshape.cancel();
  expect(document.api.getState()).toMatchObject({ committed: before, preview: null, past: [] });
  reshape.pickUp('wing');
  reshape.show(swept(40));
  reshape.show(swept(0));
  reshape.setDown('Sweep Wing');
  expect(document.api.getState()).toMatchObject({ committed: before, preview: null, past: [] });
  reshape.show(swept(40));
  expect(document.current()).toBe(before);
});

test('there is one thing in hand at a time', () => {
  const { document, drag, reshape } = bench();
  expect(reshape.pickUp('gone')).toBeNull();
  drag.pickUp('pack');
  drag.moveTo([510, 0, 0]);
  expect(reshape.pickUp('wing')).toBeNull();
  drag.cancel();
  expect(reshape.pickUp('wing')).not.toBeNull();
  reshape.show(swept(40));
  expect(reshape.pickUp('wing')).toBeNull();
  expect(drag.pickUp('pack')).toBe(false);
  expect(document.api.getState().preview).not.toBeNull();
});
