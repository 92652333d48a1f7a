import fc from 'fast-check';
import { blankAircraft } from '../../../src/model/document/blank';
import type {
  Aircraft,
  Lead,
  Part,
  StructurePiece,
  SwitchItem,
  TankItem,
} from '../../../src/model/document/types';
import { between } from '../../between';
import { boxBlock, boxPart } from '../aircraft';

const number = (min: number, max: number) => between(min, max);
const level = { yawDeg: 0, pitchDeg: 0, rollDeg: 0 } as const;

const pod = (id: string, fromMm: number): StructurePiece => ({
  id,
  kind: 'fuselage',
  name: id,
  sides: 'centre',
  buttlineMm: 0,
  sections: [0, 400].map((x) => ({
    stationMm: fromMm + x,
    widthMm: 200,
    heightMm: 160,
    waterlineMm: 0,
    roundness: 0.6,
  })),
  skinMm: 1,
  mass: { by: 'weighed', massG: 420 },
});

const leg: StructurePiece = {
  id: 'leg',
  kind: 'leg',
  name: 'Leg',
  sides: 'both',
  topMm: [500, 60, -70],
  axleMm: [530, 200, -230],
  strutDiameterMm: 8,
  strutMassG: 90,
  wheelDiameterMm: 80,
  wheelWidthMm: 25,
  wheelMassG: 60,
  retract: { axis: [0, -1, 0], angleDeg: 85 },
};

const PARTS = ['camera', 'pack', 'sender', 'ballast', 'beacon'];
const TANKS = ['main', 'header', 'tip'];
const ELEMENTS = ['canopy', 'foam', 'leg', 'pod', 'rear-pod'];

const parts: fc.Arbitrary<readonly Part[]> = fc.tuple(
  ...PARTS.map((id) =>
    fc
      .tuple(number(20, 900), number(60, 640), number(-70, 70), number(-40, 40))
      .map(([massG, x, y, z]) => boxPart(id, massG, [x, y, z])),
  ),
);

const tanks: fc.Arbitrary<readonly TankItem[]> = fc
  .tuple(
    ...TANKS.map((id, rank) =>
      fc.tuple(number(100, 900), number(-60, 60), fc.constantFrom(0, 5)).map(
        ([x, y, unusableMl]): TankItem => ({
          id,
          name: id,
          shape: { kind: 'box', lengthMm: 150, widthMm: 60, heightMm: 40 },
          positionMm: [x, y, 0],
          ...level,
          emptyMassG: 40,
          startMl: null,
          unusableMl,
          feeds: id === 'main' ? 'header' : 'outlet',
          rank,
        }),
      ),
    ),
  )
  .chain((all) => fc.subarray(all))
  .map((some) =>
    some.map((tank) => (some.some(({ id }) => id === tank.feeds) ? tank : { ...tank, feeds: 'outlet' })),
  );

const leadsBetween = (ids: readonly string[]): fc.Arbitrary<readonly Lead[]> =>
  fc
    .array(
      fc.record({
        from: fc.constantFrom(...ids),
        to: fc.constantFrom(...ids),
        massGPerM: number(20, 600),
        lengthMm: fc.option(number(300, 2500), { nil: null }),
        route: fc.constantFrom('straight' as const, 'wall' as const),
      }),
      { maxLength: 5 },
    )
    .map((all) =>
      all.map(({ lengthMm, ...lead }, k) => ({
        ...lead,
        ...(lengthMm === null ? {} : { lengthMm }),
        id: `lead-${k}`,
        name: `Lead ${k}`,
        waypointsMm: [],
      })),
    );

/** Each switch is about a thing or two, on in one position and off in another, in either order; some stay on the stand. */
const switchesOver = (
  things: readonly string[],
  tankIds: readonly string[],
): fc.Arbitrary<readonly SwitchItem[]> =>
  fc
    .shuffledSubarray([...things], {
      minLength: Math.min(2, things.length),
      maxLength: Math.min(7, things.length),
    })
    .chain((chosen) =>
      fc.tuple(
        fc.constant(chosen),
        fc.array(
          fc.record({ first: fc.boolean(), empties: fc.boolean(), stand: fc.nat(5), pair: fc.nat(3) }),
          {
            minLength: chosen.length,
            maxLength: chosen.length,
          },
        ),
      ),
    )
    .map(([chosen, ways]) => {
      const items: SwitchItem[] = [];
      for (let k = 0; k < chosen.length; k += 1) {
        const way = ways[k]!;
        const own = way.pair === 0 && k + 1 < chosen.length ? [chosen[k]!, chosen[++k]!] : [chosen[k]!];
        const emptied = way.empties && own.every((id) => tankIds.includes(id));
        const on = { id: 'on', name: 'on' };
        const off = {
          id: 'off',
          name: 'off',
          ...(emptied ? { empty: own } : { without: own }),
          ...(way.stand === 0 ? { onStand: true } : {}),
        };
        items.push({ id: `switch-${k}`, name: `Switch ${k}`, positions: way.first ? [off, on] : [on, off] });
      }
      return items;
    });

/** Aircraft with leads, a foam block that parts are let into, a leg that retracts, pods, a weighed airframe and switches. */
export const switchedAircraft: fc.Arbitrary<Aircraft> = fc
  .record({
    parts,
    tanks,
    retracts: fc.boolean(),
    airframe: fc.option(
      fc.record({
        use: fc.constantFrom('correct' as const, 'replace' as const, 'compare' as const),
        massG: fc.oneof(number(300, 900), number(1500, 4000)),
        stationMm: number(300, 600),
      }),
      { nil: null },
    ),
  })
  .chain(({ retracts, airframe, ...own }) => {
    const tankIds = own.tanks.map(({ id }) => id);
    const items = [...PARTS, ...tankIds];
    const elements = ELEMENTS.filter((id) => id !== 'leg' || !retracts);
    return fc
      .record({ leads: leadsBetween(items), switches: switchesOver([...items, ...elements], tankIds) })
      .map(({ leads, switches }): Aircraft => {
        const { retract: _, ...fixedLeg } = leg as Extract<StructurePiece, { kind: 'leg' }>;
        const foam: StructurePiece = {
          ...boxBlock('foam', [300, 0, 0], { by: 'foam', gPerMl: 0.3 }),
          cuttable: true,
        } as StructurePiece;
        return {
          ...blankAircraft(),
          ...own,
          structure: [
            pod('pod', 0),
            pod('rear-pod', 420),
            boxBlock('canopy', [250, 0, 60], { by: 'weighed', massG: 90 }),
            foam,
            boxBlock('keel', [450, 0, 0], { by: 'weighed', massG: 1200 }),
            retracts ? leg : fixedLeg,
          ],
          bareAirframe: airframe && { ...airframe, buttlineMm: 0 },
          fuel: {
            kind: 'petrol',
            name: 'Petrol',
            densityGPerMl: 0.74,
            use: 'burn',
            share: 'volume',
          } as unknown as NonNullable<Aircraft['fuel']>,
          leads,
          switches,
        };
      });
  });
