import { Quaternion, Vector3 } from 'three';
import { describe, expect, test } from 'vitest';
import { LEVEL } from '../../../src/model/balance/balance';
import { downOf } from '../../../src/model/loads/attitude';
import { plumbLine } from '../../../src/scene/marks/plumbLine';

const CG = [700, 4, 30] as const;
const level = { turn: new Quaternion(), aboutMm: [1000, 0, 0] as const, groundMm: -200, level: true };

describe('the plumb line', () => {
  test('hangs straight down to the mat and runs across to the rule', () => {
    const { footMm, pairs } = plumbLine(CG, 'free', LEVEL, level);
    expect(footMm).toEqual([700, 4, -200]);
    expect(pairs.slice(-3)).toEqual([700, 0, -200]);
  });

  test('runs on into the beam in the elevations of a level aircraft', () => {
    expect(plumbLine(CG, 'side', LEVEL, level).footMm).toBeNull();
  });

  test('in a climb of 30° it meets the level ground square', () => {
    const down = downOf({ pitchDeg: 30, rollDeg: 0, forwardG: 0 });
    // Up, in the aircraft's frame, when its nose (−x) points 30° up.
    const up = new Vector3(-Math.sin(Math.PI / 6), 0, Math.cos(Math.PI / 6));
    const turn = new Quaternion().setFromUnitVectors(new Vector3(0, 0, 1), up);
    const tilt = { turn, aboutMm: [1000, 0, 0] as const, groundMm: -600, level: false };
    const { footMm } = plumbLine(CG, 'free', down, tilt);
    const foot = new Vector3(...(footMm ?? [0, 0, 0]));
    const along = foot.clone().sub(new Vector3(...CG));
    expect(along.clone().normalize().dot(up)).toBeCloseTo(-1, 9);
    // The ground lies 600 mm below the point it turns about, measured along up.
    expect(foot.sub(new Vector3(1000, 0, 0)).dot(up)).toBeCloseTo(-600, 6);
  });

  test('in a launch it leans back: what is felt as down is no longer square to the ground', () => {
    const down = downOf({ pitchDeg: 0, rollDeg: 0, forwardG: 3 });
    const { footMm } = plumbLine(CG, 'free', down, { ...level, level: true });
    // 3 g ahead and 1 g down: the line leans aft by three for one.
    const [x = 0, , z = 0] = footMm ?? [];
    expect((x - CG[0]) / (CG[2] - z)).toBeCloseTo(3, 6);
  });
});
