import type { Vec3 } from '../../../src/engine/geometry/types';
import type { Aircraft, Lead, StructurePiece, TankItem } from '../../../src/model/document/types';

/**
 * The CG of every flying load state at steps of the burn, by sums of mass × arm alone, for aircraft of boxes square to the
 * axes, legs and straight leads. Nothing of the engine or the model is used.
 */
export interface Ends {
  readonly station: readonly [least: number, most: number];
  readonly buttline: readonly [least: number, most: number];
  readonly massG: readonly [least: number, most: number];
}

interface Point {
  readonly massG: number;
  readonly x: number;
  readonly y: number;
}

interface Boxed {
  readonly positionMm: Vec3;
  readonly shape: { readonly kind: string };
}

/** One position of a switch. */
interface At {
  readonly without?: readonly string[] | undefined;
  readonly empty?: readonly string[] | undefined;
  readonly onStand?: boolean | undefined;
  readonly legsUp?: boolean;
}

const sumOf = (points: readonly Point[]): Point => {
  const massG = points.reduce((sum, point) => sum + point.massG, 0);
  const arm = (axis: 'x' | 'y') =>
    massG === 0 ? 0 : points.reduce((sum, point) => sum + point.massG * point[axis], 0) / massG;
  return { massG, x: arm('x'), y: arm('y') };
};

function halvesOf({ shape }: Boxed): Vec3 {
  const { lengthMm, widthMm, heightMm } = shape as Extract<TankItem['shape'], { kind: 'box' }>;
  return [lengthMm / 2, widthMm / 2, heightMm / 2];
}

const volumeOf = (box: Boxed) => 8 * halvesOf(box).reduce((product, half) => product * half, 1);

/** What two boxes share: its volume and its middle. */
function shared(a: Boxed, b: Boxed): { readonly mm3: number; readonly x: number; readonly y: number } | null {
  const [ha, hb] = [halvesOf(a), halvesOf(b)];
  const span = ([0, 1, 2] as const).map((i) => [
    Math.max(a.positionMm[i] - ha[i], b.positionMm[i] - hb[i]),
    Math.min(a.positionMm[i] + ha[i], b.positionMm[i] + hb[i]),
  ]) as [number, number][];
  if (span.some(([from, to]) => from >= to)) return null;
  const [x, y] = span.map(([from, to]) => (from + to) / 2);
  return { mm3: span.reduce((product, [from, to]) => product * (to - from), 1), x: x!, y: y! };
}

/** Where an axle goes: the rotation matrix about a unit axis (Rodrigues), entry by entry. */
function swung({ topMm, axleMm, retract }: Extract<StructurePiece, { kind: 'leg' }>): Vec3 {
  if (!retract) return axleMm;
  const size = Math.hypot(...retract.axis);
  const [u, v, w] = retract.axis.map((one) => one / size) as [number, number, number];
  const turn = (retract.angleDeg * Math.PI) / 180;
  const [c, s, k] = [Math.cos(turn), Math.sin(turn), 1 - Math.cos(turn)];
  const rows = [
    [c + u * u * k, u * v * k - w * s, u * w * k + v * s],
    [v * u * k + w * s, c + v * v * k, v * w * k - u * s],
    [w * u * k - v * s, w * v * k + u * s, c + w * w * k],
  ];
  const arm = axleMm.map((mm, i) => mm - topMm[i]!);
  return rows.map(
    (row, i) => topMm[i]! + row.reduce((sum, one, j) => sum + one * arm[j]!, 0),
  ) as unknown as Vec3;
}

/** An element in a load state, a block less the pockets of everything that is ever let into it. */
function elementPoints(element: StructurePiece, { parts, tanks }: Aircraft, legsUp: boolean): Point[] {
  const sides = element.sides === 'both' ? [1, -1] : [1];
  return sides.flatMap((side): Point[] => {
    if (element.kind === 'leg') {
      const [top, axle] = [element.topMm, legsUp ? swung(element) : element.axleMm];
      const strut = {
        massG: element.strutMassG,
        x: (top[0] + axle[0]) / 2,
        y: (side * (top[1] + axle[1])) / 2,
      };
      return [strut, { massG: element.wheelMassG, x: axle[0], y: side * axle[1] }];
    }
    if (element.kind !== 'block') throw new Error('boxes and legs only');
    const [x, y, z] = element.positionMm;
    const box: Boxed = { positionMm: [x, side * y, z], shape: element.shape };
    const { mass } = element;
    if (mass.by === 'skin') throw new Error('no skins');
    const weighedG = mass.by === 'weighed' ? (side < 0 ? (mass.leftMassG ?? mass.massG) : mass.massG) : 0;
    const massG = mass.by === 'foam' ? (mass.gPerMl * volumeOf(box)) / 1000 : weighedG;
    const pockets = element.cuttable ? [...parts, ...tanks].flatMap((item) => shared(box, item) ?? []) : [];
    return [
      { massG, x, y: side * y },
      ...pockets.map((pocket) => ({
        massG: (-massG * pocket.mm3) / volumeOf(box),
        x: pocket.x,
        y: pocket.y,
      })),
    ];
  });
}

/** An airframe that was weighed is what the scales said, and what a switch takes off or swings is told by its shapes. */
function airframe(aircraft: Aircraft, off: ReadonlySet<string>, legsUp: boolean): Point {
  const { structure, bareAirframe } = aircraft;
  const pointsOf = (some: readonly StructurePiece[], up: boolean) =>
    sumOf(some.flatMap((element) => elementPoints(element, aircraft, up)));
  const here = pointsOf(
    structure.filter(({ id }) => !off.has(id)),
    legsUp,
  );
  if (!bareAirframe || bareAirframe.use === 'compare') return here;
  const { massG, stationMm: x, buttlineMm: y } = bareAirframe;
  const whole = pointsOf(structure, false);
  return sumOf([{ massG, x, y }, here, { ...whole, massG: -whole.massG }]);
}

/** Thin straight rods from point to point, with the whole lead's mass spread over their length. */
function leadPoints(
  lead: Lead,
  items: readonly { readonly id: string; readonly positionMm: Vec3 }[],
): Point[] {
  const [from, to] = [lead.from, lead.to].map((id) => items.find((item) => item.id === id)?.positionMm);
  if (!from || !to) return [];
  const way = [from, ...lead.waypointsMm, to];
  const rods = way.slice(1).map(([x, y, z], i) => {
    const [ax, ay, az] = way[i]!;
    return { mm: Math.hypot(x - ax, y - ay, z - az), x: (x + ax) / 2, y: (y + ay) / 2 };
  });
  const longMm = rods.reduce((sum, { mm }) => sum + mm, 0);
  const massG = (lead.massGPerM * (lead.lengthMm ?? longMm)) / 1000;
  return longMm === 0
    ? [{ massG, x: from[0], y: from[1] }]
    : rods.map(({ mm, x, y }) => ({ massG: (massG * mm) / longMm, x, y }));
}

/**
 * The tanks drained in equal steps. Of those that feed one place the lowest rank gives first, all of one rank in the
 * proportion of what they and their feeders had at the start, and each from its feeders before its own.
 */
function burn(tanks: readonly TankItem[], gPerMl: number, steps: number): Point[] {
  const held = tanks.map((tank) => {
    const ml = tank.startMl ?? volumeOf(tank) / 1000;
    return { tank, ml, ownMl: Math.max(0, ml - tank.unusableMl), firstMl: 0 };
  });
  type Held = (typeof held)[number];
  const feeding = (place: string) => held.filter(({ tank }) => tank.feeds === place);
  const givesMl = (one: Held): number =>
    one.ownMl + feeding(one.tank.id).reduce((sum, feeder) => sum + givesMl(feeder), 0);
  for (const one of held) one.firstMl = givesMl(one);
  const usableMl = feeding('outlet').reduce((sum, one) => sum + givesMl(one), 0);
  const draw = (place: string, ml: number) => {
    for (let left = ml; left > 1e-9; ) {
      const giving = feeding(place).filter((one) => givesMl(one) > 1e-9);
      if (giving.length === 0) return;
      const rank = Math.min(...giving.map(({ tank }) => tank.rank));
      const group = feeding(place).filter(({ tank }) => tank.rank === rank);
      const [firstMl, nowMl] = [
        group.reduce((sum, one) => sum + one.firstMl, 0),
        group.reduce((sum, one) => sum + givesMl(one), 0),
      ];
      const takenMl = Math.min(left, nowMl);
      for (const one of group) {
        const wantedMl = (takenMl * one.firstMl) / firstMl;
        const fedMl = Math.min(wantedMl, givesMl(one) - one.ownMl);
        const ownMl = Math.min(wantedMl - fedMl, one.ownMl);
        draw(one.tank.id, fedMl);
        one.ownMl -= ownMl;
        one.ml -= ownMl;
      }
      left -= takenMl;
    }
  };
  const now = () =>
    sumOf(held.map(({ tank, ml }) => ({ massG: ml * gPerMl, x: tank.positionMm[0], y: tank.positionMm[1] })));
  const states = [now()];
  for (let k = 0; usableMl > 0 && k < steps; k += 1) {
    draw('outlet', usableMl / steps);
    states.push(now());
  }
  return states;
}

/** Every combination of the positions that fly, and the legs up or down where one swings. */
function everyState({ structure, switches = [] }: Aircraft): readonly (readonly At[])[] {
  const inFile = switches.map(({ positions }): readonly At[] => {
    const flying = positions.filter(({ onStand }) => !onStand);
    return flying.length > 0 ? flying : positions;
  });
  const swings = structure.some((element) => element.kind === 'leg' && element.retract);
  return [...(swings ? [[{}, { legsUp: true }]] : []), ...inFile].reduce<readonly (readonly At[])[]>(
    (all, positions) => all.flatMap((chosen) => positions.map((at) => [...chosen, at])),
    [[]],
  );
}

/** The ends of CG and mass over all flying load states and so many steps of the burn. */
export function endsByHand(aircraft: Aircraft, steps: number): Ends {
  const { parts, tanks, leads = [], fuel } = aircraft;
  const found = everyState(aircraft).flatMap((state) => {
    const off = new Set(state.flatMap(({ without = [] }) => without));
    const emptied = new Set(state.flatMap(({ empty = [] }) => empty));
    const aboard = [...parts, ...tanks].filter(({ id }) => !off.has(id));
    const solid = sumOf([
      airframe(
        aircraft,
        off,
        state.some(({ legsUp }) => legsUp),
      ),
      ...aboard.map((item) => ({
        massG: 'massG' in item ? item.massG : item.emptyMassG,
        x: item.positionMm[0],
        y: item.positionMm[1],
      })),
      ...leads.flatMap((lead) => leadPoints(lead, aboard)),
    ]);
    const there = tanks
      .filter(({ id }) => !off.has(id))
      .map((tank): TankItem => {
        let { feeds } = tank;
        while (off.has(feeds)) feeds = tanks.find(({ id }) => id === feeds)?.feeds ?? 'outlet';
        return { ...tank, feeds, ...(emptied.has(tank.id) && { startMl: 0 }) };
      });
    return burn(there, fuel?.densityGPerMl ?? 0, steps).map((liquid) => sumOf([solid, liquid]));
  });
  const ends = (figures: readonly number[]) => [Math.min(...figures), Math.max(...figures)] as const;
  return {
    station: ends(found.map(({ x }) => x)),
    buttline: ends(found.map(({ y }) => y)),
    massG: ends(found.map(({ massG }) => massG)),
  };
}
