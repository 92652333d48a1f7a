import { expect, it } from 'vitest';
import { cellFigures, chemistries, typicalPackMass } from '../../../src/engine/power/cells';

it('cells have the voltages of the standards and handbooks', () => {
  // Nominal: IEC 61960-3 (lithium-ion 3.6 to 3.7 V) and IEC 61951-2 (NiMH 1.2 V, discharged to 1.0 V); charged to 4.20 V, iron
  // phosphate 3.2 V and 3.65 V: Linden's Handbook of Batteries, chapters on rechargeable lithium cells. All from memory.
  const volts = (name: (typeof chemistries)[number]) => [cellFigures[name].fullV, cellFigures[name].nominalV];
  expect(volts('lipo')).toEqual([4.2, 3.7]);
  expect(volts('liion')).toEqual([4.2, 3.6]);
  expect(volts('life')).toEqual([3.65, 3.2]);
  expect([cellFigures.nimh.nominalV, cellFigures.nimh.emptyV]).toEqual([1.2, 1]);
  for (const { fullV, nominalV, emptyV } of Object.values(cellFigures)) {
    expect(fullV).toBeGreaterThan(nominalV);
    expect(nominalV).toBeGreaterThan(emptyV);
  }
});

it('what packs weigh by their kind lies in the published range of whole packs', () => {
  // Specific energy of lithium-ion cells 100 to 265 Wh/kg, NiMH 60 to 120 Wh/kg (Linden's Handbook of Batteries, from
  // memory); a pack with its wires and wrap stores less, never more.
  for (const chemistry of chemistries) {
    const { massG, plusMinusG } = typicalPackMass(chemistry, 3, 5000);
    const wh = (3 * cellFigures[chemistry].nominalV * 5000) / 1000;
    const lightest = massG - plusMinusG;
    expect((1000 * wh) / lightest).toBeLessThan(chemistry === 'nimh' ? 120 : 265);
    expect((1000 * wh) / massG).toBeGreaterThan(50);
  }
});
