import { describe, expect, test } from 'vitest';
import { LEVEL } from '../../../src/model/balance/balance';
import { mirrorPart, updatePart } from '../../../src/model/document/edit';
import type { Aircraft } from '../../../src/model/document/types';
import { placeProblem } from '../../../src/model/place/placeProblem';
import { defaultRule, type PlaceSettings } from '../../../src/model/place/placeSettings';
import { demo } from '../../demo/demoAircraft';
import { redshank } from './bench';

const asked = (aircraft: Aircraft, settings: Partial<PlaceSettings> = {}) => {
  const question = placeProblem(aircraft, { down: LEVEL, ...settings });
  if ('fault' in question) throw new Error(question.fault);
  return question;
};

/** The Redshank with its pump set to one side and its mirror image beside it. */
function paired(): {
  readonly aircraft: Aircraft;
  readonly ids: readonly string[];
  readonly names: readonly string[];
} {
  const aside = updatePart(redshank(500), 'pump', { positionMm: [300, -60, 0] });
  const made = mirrorPart(aside, 'pump')!;
  const ids = ['pump', made.id];
  return { ...made, ids, names: ids.map((id) => made.aircraft.parts.find((part) => part.id === id)!.name) };
}

describe('nothing that may move is silently frozen', () => {
  test('each of a mirrored pair stays, is not offered as movable, and a note says which and why', () => {
    const { aircraft, ids, names } = paired();
    const { problem, notes } = asked(aircraft);
    for (const id of ids) {
      const part = aircraft.parts.find((each) => each.id === id)!;
      expect(part.twinId).toBeDefined();
      expect(defaultRule(aircraft, part)).toEqual({ by: 'stay' });
      expect(problem.parts.map((each) => each.id)).not.toContain(id);
      expect(problem.obstacles.map((each) => each.id)).toContain(id);
    }
    const note = notes.find((each) => /mirrored pair/.test(each));
    for (const name of names) expect(note).toContain(name);
  });

  test('a pair that was asked to move is named too, whatever its role', () => {
    const { aircraft, names } = paired();
    const servos: Aircraft = {
      ...aircraft,
      parts: aircraft.parts.map((part) =>
        part.twinId === undefined ? part : { ...part, role: 'control' as const },
      ),
    };
    expect(asked(servos).notes.filter((each) => /mirrored pair/.test(each))).toEqual([]);
    const rail = { by: 'rail', stations: 'hull' } as const;
    const { notes } = asked(servos, { rules: { pump: rail } });
    expect(notes.find((each) => /mirrored pair/.test(each))).toContain(names[0]);
  });

  test.each(['whimbrel', 'corncrake', 'sandmartin', 'fieldfare'] as const)(
    '%s: whatever is listed as movable has a choice of places, or is named as staying',
    (name) => {
      const aircraft = demo(name);
      const { problem, notes } = asked(aircraft);
      const listed = [...aircraft.parts, ...aircraft.tanks].filter(
        (item) => defaultRule(aircraft, item).by !== 'stay',
      );
      expect(listed.length).toBeGreaterThan(0);
      for (const item of listed) {
        const part = problem.parts.find(({ id }) => id === item.id);
        const hasChoice =
          part !== undefined &&
          (part.options.length > 1 ||
            part.options.some(({ region, sizeMm }) =>
              [0, 1, 2].some((axis) => region.maxMm[axis]! - region.minMm[axis]! > sizeMm[axis]! + 0.1),
            ));
        expect(hasChoice || notes.some((note) => note.includes(item.name)), item.name).toBe(true);
      }
    },
  );
});
