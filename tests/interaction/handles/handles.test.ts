import { describe, expect, test } from 'vitest';
import { alongAxis, type Handle, type Shaped, snappedFigure } from '../../../src/interaction/handles/handle';
import { handlesOf, shapedById, shownHandles } from '../../../src/interaction/handles/handlesOf';
import { replaceStructure, updateTank } from '../../../src/model/document/edit';
import type { Aircraft } from '../../../src/model/document/types';
import { writeAircraft } from '../../../src/model/document/write';
import { readAircraft } from '../../../src/model/reading/read';
import { createBench } from '../../../src/store/bench';
import { demo, NAMES } from '../../demo/demoAircraft';
import { randomFrom } from '../../randomFrom';
import { seed } from '../../seed';

const random = randomFrom(seed);
const demoAircraft = NAMES.map(demo);
const put = (aircraft: Aircraft, thing: Shaped) =>
  'kind' in thing ? replaceStructure(aircraft, thing) : updateTank(aircraft, thing.id, thing);

/** Every thing of the demo aircraft that has handles, with them. */
const all = demoAircraft.flatMap((aircraft) =>
  [...aircraft.structure, ...aircraft.tanks].flatMap(({ id, name }) => {
    const thing = shapedById(aircraft, id);
    return thing ? [{ aircraft, id, name, thing, handles: handlesOf(aircraft, thing) }] : [];
  }),
);

describe('every handle of every thing of the demo aircraft', () => {
  test('there are some for each kind', () => {
    const kinds = new Set(
      all.flatMap(({ thing, handles }) =>
        handles.length > 0 ? ['kind' in thing ? thing.kind : 'tank'] : [],
      ),
    );
    expect([...kinds].sort()).toEqual(['block', 'boom', 'fuselage', 'leg', 'surface', 'tank']);
  });

  test('goes where it is dragged to: as far along its line as the hand', () => {
    for (const { aircraft, id, thing, handles } of all) {
      expect(new Set(handles.map((handle) => handle.id)).size).toBe(handles.length);
      for (const handle of handles) {
        const along = (random() - 0.5) * 2;
        const figure = handle.after(along);
        if (figure < handle.least || figure > handle.most) continue;
        const next = handlesOf(aircraft, handle.set(figure)).find((other) => other.id === handle.id)!;
        expect(next.value, handle.label).toBeCloseTo(figure, 9);
        for (const axis of [0, 1, 2] as const)
          expect(next.atMm[axis], `${aircraft.name}, ${id}: ${handle.label}`).toBeCloseTo(
            handle.atMm[axis] + along * handle.axis[axis],
            6,
          );
        expect(Math.hypot(...handle.axis)).toBeCloseTo(1, 12);
      }
      expect(handles.every((handle) => handle.set(handle.value).id === thing.id)).toBe(true);
    }
  });

  test('at the figure that it has it changes nothing, and at others the file still reads', () => {
    for (const { aircraft, handles } of all.filter((_, i) => i % 9 === 0)) {
      for (const handle of handles.filter((_, i) => i % 6 === 0)) {
        expect(writeAircraft(put(aircraft, handle.set(handle.value)))).toBe(writeAircraft(aircraft));
        const smaller = Math.max(handle.least, handle.value * 0.98);
        const read = readAircraft(put(aircraft, handle.set(smaller)));
        expect(read.ok ? 'reads' : read.faults[0]?.sentence, handle.label).toBe('reads');
      }
    }
  });
});

describe('which handles show', () => {
  const wing = all.find(({ thing }) => 'panels' in thing)!;
  test('none that moves towards the eye, and of one place alone but for the main ones', () => {
    for (const [view, axis] of [
      ['side', 1],
      ['top', 2],
      ['front', 0],
    ] as const)
      for (const { axis: way } of shownHandles(wing.handles, view, 1))
        expect(Math.abs(way[axis])).toBeLessThan(0.91);
    const shown = shownHandles(wing.handles, 'free', 1);
    expect(shown.filter(({ main }) => !main).every(({ place }) => place === 1)).toBe(true);
    expect(shown.filter(({ main }) => main)).toHaveLength(wing.handles.filter(({ main }) => main).length);
  });

  test('none on a tank that is locked', () => {
    const aircraft = demoAircraft.find(({ tanks }) => tanks.length > 0)!;
    const { id } = aircraft.tanks[0]!;
    expect(shapedById(aircraft, id)).not.toBeNull();
    expect(shapedById(updateTank(aircraft, id, { locked: true }), id)).toBeNull();
  });
});

test('the place on a line nearest to a ray, by brute force', () => {
  for (let i = 0; i < 200; i += 1) {
    const vector = () => [random() - 0.5, random() - 0.5, random() - 0.5] as const;
    const [at, o] = [vector(), vector()];
    const unit = (v: ReturnType<typeof vector>) => v.map((x) => x / Math.hypot(...v)) as unknown as typeof v;
    const [axis, way] = [unit(vector()), unit(vector())];
    const found = alongAxis({ originMm: o, direction: way }, at, axis);
    if (found === null) continue;
    const apart = (t: number) => {
      const p = at.map((x, k) => x + t * axis[k]!);
      const s = p.reduce((sum, x, k) => sum + (x - o[k]!) * way[k]!, 0);
      return Math.hypot(...p.map((x, k) => x - o[k]! - s * way[k]!));
    };
    for (const off of [-1e-3, 1e-3]) expect(apart(found)).toBeLessThanOrEqual(apart(found + off) + 1e-12);
  }
  expect(alongAxis({ originMm: [0, 5, 0], direction: [0, 0, 1] }, [0, 0, 0], [0, 0, 1])).toBeNull();
});

test('a figure catches on a neighbour, else on the grid; free on neither; never past its limits', () => {
  const handle: Handle = {
    id: 'a',
    label: 'A',
    atMm: [0, 0, 0],
    axis: [1, 0, 0],
    quantity: 'length',
    value: 100,
    least: 20,
    most: 200,
    place: 0,
    main: true,
    catches: [123.4, 150],
    after: (along) => along,
    set: () => demoAircraft[0]!.structure[0]!,
  };
  const at = (wanted: number, free = false) => snappedFigure(handle, wanted, { gridMm: 5, reachMm: 3, free });
  expect([at(121), at(118), at(131.9), at(148)]).toEqual([123.4, 120, 130, 150]);
  expect([at(121.04, true), at(5), at(999)]).toEqual([121, 20, 200]);
  expect(
    snappedFigure({ ...handle, quantity: 'angle', catches: [] }, 22.3, {
      gridMm: 5,
      reachMm: 3,
      free: false,
    }),
  ).toBe(22.5);
});

test('a drag is one step that undo takes back byte for byte; what cannot be is refused with a sentence', () => {
  const bench = createBench(demoAircraft[0]!);
  const before = writeAircraft(bench.document.current());
  const things = [...demoAircraft[0]!.structure.slice(0, 6), demoAircraft[0]!.tanks[0]!];
  for (const { id } of things) {
    const thing = shapedById(bench.document.current(), id)!;
    const handle = handlesOf(bench.document.current(), thing)[0];
    if (!handle) continue;
    expect(bench.reshape.pickUp(id)).toBe(thing);
    for (const along of [1, 2, 3]) bench.reshape.show(handle.set(handle.after(along)));
    expect(bench.reshape.setDown('Change it')).toBeNull();
    expect(bench.document.api.getState().past).toHaveLength(1);
    bench.document.undo();
    expect(writeAircraft(bench.document.current())).toBe(before);
  }
  const hull = bench.document.current().structure.find(({ kind }) => kind === 'fuselage')!;
  bench.reshape.pickUp(hull.id);
  const { sections } = hull as Extract<typeof hull, { kind: 'fuselage' }>;
  bench.reshape.show({ ...hull, sections: sections.toReversed() } as typeof hull);
  expect(bench.reshape.setDown('Turn it round')).toContain('nose to tail');
  expect(writeAircraft(bench.document.current())).toBe(before);
});
