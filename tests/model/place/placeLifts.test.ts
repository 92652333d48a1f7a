import { describe, expect, test } from 'vitest';
import type { PlaceProblem } from '../../../src/engine/place/types';
import { LEVEL } from '../../../src/model/balance/balance';
import type { Aircraft } from '../../../src/model/document/types';
import { placeLifts } from '../../../src/model/place/placeLifts';
import { placeProblem } from '../../../src/model/place/placeProblem';
import type { PlaceSettings } from '../../../src/model/place/placeSettings';
import { demo, NAMES } from '../../demo/demoAircraft';
import { redshank } from './bench';

/** Where each part may go, by its id. */
const placesIn = ({ parts }: PlaceProblem, held: ReadonlySet<string> = new Set()) =>
  Object.fromEntries(
    parts.map(({ id, options }) => [
      id,
      options
        .map((option) => option.id)
        .filter((optionId) => !held.has(`${id} ${optionId}`))
        .sort(),
    ]),
  );

/** The problem as it is asked, and as it is when nothing is let go; locked parts have their one place there. */
function both(aircraft: Aircraft, settings: PlaceSettings) {
  const asked = placeProblem(aircraft, settings);
  const wide = placeLifts(aircraft, settings);
  if ('fault' in asked || 'fault' in wide) throw new Error('Expected a question.');
  const held = new Set(
    wide.lifts.flatMap((lift) =>
      lift.what === 'lock' || lift.what === 'bay'
        ? lift.optionIds.map((optionId) => `${lift.partId} ${optionId}`)
        : [],
    ),
  );
  const unlifted = Object.entries(placesIn(wide.problem, held)).filter(
    ([, options]) => String(options) !== 'locked',
  );
  return { asked: placesIn(asked.problem), unlifted: Object.fromEntries(unlifted) };
}

const band = { forwardMm: 300, aftMm: 320 };

describe('why nothing works is asked of the very question', () => {
  test.each(NAMES)('%s: with nothing let go all may go where it may in the search', (name) => {
    const { asked, unlifted } = both(demo(name), { down: LEVEL, band });
    expect(unlifted).toEqual(asked);
  });

  test('so it is with what a person has set free or tied to a bay', () => {
    const aircraft = redshank(500);
    const { asked, unlifted } = both(aircraft, {
      down: LEVEL,
      rules: {
        pump: { by: 'rail', stations: { fromMm: 250, toMm: 380 } },
        receiver: { by: 'bays', bayIds: ['nose-bay'] },
        camera: { by: 'stay' },
      },
    });
    expect(unlifted).toEqual(asked);
    expect(Object.keys(asked).sort()).toEqual(['pack', 'pump', 'receiver']);
  });

  test('a tank set free is free there too', () => {
    const aircraft = demo('sandmartin');
    const [tank] = aircraft.tanks;
    const at = tank!.positionMm[0];
    const { asked, unlifted } = both(aircraft, {
      down: LEVEL,
      band,
      rules: { [tank!.id]: { by: 'rail', stations: { fromMm: at - 10, toMm: at + 10 } } },
    });
    expect(asked[tank!.id]).toEqual(['rail']);
    expect(unlifted).toEqual(asked);
  });
});
