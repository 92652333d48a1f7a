import { describe, expect, test } from 'vitest';
import { sourceRefusal, withMassSource } from '../../../src/model/airframe/massSource';
import { balanceAt, LEVEL } from '../../../src/model/balance/balance';
import { measuredThings, USUAL } from '../../../src/model/balance/measurements';
import type { StructurePiece } from '../../../src/model/document/types';
import { aircraftOf, boxBlock } from '../aircraft';

type Massive = Parameters<typeof withMassSource>[0];

const estimated: Massive = {
  ...(boxBlock('hull', [400, 0, 0], { by: 'foam', gPerMl: 0.3 }) as Massive),
  massFrom: 'assumed',
  plusMinusG: 80,
};
const weighed = withMassSource(estimated, { by: 'weighed', massG: 310 });

const plusMinusG = (piece: StructurePiece) => {
  const aircraft = aircraftOf([piece]);
  return measuredThings(aircraft, balanceAt(aircraft, { fuelFraction: 1, down: LEVEL }).bodies)[0]!.plusMinus
    .g;
};

describe('where the mass of a piece of structure comes from', () => {
  test('put on a scale it is weighed, and as sure as the scale', () => {
    expect(weighed).toMatchObject({ mass: { by: 'weighed', massG: 310 }, massFrom: 'weighed' });
    expect(plusMinusG(weighed)).toBe(USUAL.scalesG);
    // Corrected later, what was said of it stands.
    const said = { ...weighed, massFrom: 'measured', plusMinusG: 4 } as const;
    expect(withMassSource(said, { by: 'weighed', massG: 305 })).toMatchObject({
      massFrom: 'measured',
      plusMinusG: 4,
    });
  });

  test('worked out from a density again it is no longer weighed', () => {
    const back = withMassSource(weighed, { by: 'foam', gPerMl: 0.3 });
    expect(back).not.toHaveProperty('massFrom');
    // A box of 20 × 10 × 5 cm at 0.3 g/ml is 300 g.
    expect(plusMinusG(back)).toBeCloseTo(USUAL.notWeighed * 300, 9);
    expect(withMassSource({ ...weighed, massFrom: 'unknown' }, { by: 'foam', gPerMl: 0.3 }).massFrom).toBe(
      'unknown',
    );
  });

  test('nobody can say that an estimate was weighed', () => {
    for (const source of ['weighed', 'measured'] as const) {
      expect(sourceRefusal(estimated, source)).toMatch(/worked out from a density/);
      expect(sourceRefusal(weighed, source)).toBeNull();
    }
    for (const source of ['typical', 'assumed', 'unknown', undefined] as const)
      expect(sourceRefusal(estimated, source)).toBeNull();
    expect(sourceRefusal(undefined, 'weighed')).toBeNull();
  });
});
