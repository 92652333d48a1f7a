import { shapeFault } from '../mass/shapeFault';
import { isOverfull } from './liquidInShape';
import { tankVolumeMl } from './liquidState';
import type { Tank } from './types';
import { tankShapeFault } from './vesselOf';

/** What is wrong with the tanks and the way they feed, a sentence for each fault, naming the tank. */
export function plumbingFaults(tanks: readonly Tank[]): string[] {
  return [...tanks.flatMap(contentFaults), ...idFaults(tanks), ...feedFaults(tanks), ...groupFaults(tanks)];
}

const named = (tank: Tank): string => `Tank “${tank.name}”`;
const ml = (volume: number): string => `${Number(volume.toPrecision(6))} ml`;

function contentFaults(tank: Tank): string[] {
  const who = named(tank);
  const badShape = tankShapeFault(tank.shape) ?? shapeFault(tank.shape);
  if (badShape) return [`${who}: ${badShape}`];
  const volumeMl = tankVolumeMl(tank);
  if (!(volumeMl > 0)) return [`${who} has no volume.`];
  const faults: string[] = [];
  const content = (value: number, words: string) => {
    if (!(value >= 0 && Number.isFinite(value)))
      faults.push(`${who}: expected ${words} of 0 ml or more, got ${value}.`);
    else if (isOverfull(value, volumeMl)) {
      faults.push(`${who} holds ${ml(volumeMl)}, which is less than ${words} of ${ml(value)}.`);
    }
  };
  content(tank.startMl, 'a start');
  content(tank.unusableMl, 'an unusable rest');
  if (!(tank.densityGPerMl > 0 && Number.isFinite(tank.densityGPerMl))) {
    faults.push(`${who}: expected a density above 0 g/ml, got ${tank.densityGPerMl}.`);
  }
  if (!Number.isFinite(tank.rank)) faults.push(`${who}: expected a number for its rank, got ${tank.rank}.`);
  return faults;
}

function idFaults(tanks: readonly Tank[]): string[] {
  return tanks.flatMap((tank, i) => {
    if (tank.id === 'outlet')
      return [`${named(tank)} has the id “outlet”, which stands for the engine or dump valve.`];
    const first = tanks.findIndex(({ id }) => id === tank.id);
    return first < i
      ? [`${named(tank)} and tank “${tanks[first]!.name}” have the same id, “${tank.id}”.`]
      : [];
  });
}

function feedFaults(tanks: readonly Tank[]): string[] {
  const byId = new Map(tanks.map((tank) => [tank.id, tank]));
  const faults = tanks.flatMap((tank) => {
    if (tank.feeds === 'outlet' || byId.has(tank.feeds)) return [];
    if (tank.feeds === '')
      return [`${named(tank)} feeds nothing; it should feed the outlet or another tank.`];
    return [`${named(tank)} feeds “${tank.feeds}”, but there is no such tank.`];
  });
  for (const circle of circles(tanks, byId)) {
    const way = [...circle, circle[0]!].map(({ name }) => `“${name}”`).join(' → ');
    faults.push(
      circle.length === 1
        ? `${named(circle[0]!)} feeds itself.`
        : `Tanks feed each other in a circle: ${way}. Nothing in them reaches the outlet.`,
    );
  }
  if (tanks.length > 0 && !tanks.some(({ feeds }) => feeds === 'outlet')) {
    faults.push('No tank feeds the outlet, so nothing reaches it.');
  }
  return faults;
}

/** Each circle of tanks once, beginning with its first tank in the list. */
function circles(tanks: readonly Tank[], byId: ReadonlyMap<string, Tank>): Tank[][] {
  const seen = new Set<Tank>();
  const found: Tank[][] = [];
  for (const start of tanks) {
    const path: Tank[] = [];
    let tank: Tank | undefined = start;
    while (tank && !seen.has(tank)) {
      seen.add(tank);
      path.push(tank);
      tank = byId.get(tank.feeds);
    }
    if (tank && path.includes(tank)) found.push(path.slice(path.indexOf(tank)));
  }
  return found;
}

/** Tanks of one rank that feed the same place have to agree on how they share. */
function groupFaults(tanks: readonly Tank[]): string[] {
  return tanks.flatMap((tank, i) => {
    const group = tanks.filter(({ feeds, rank }) => feeds === tank.feeds && rank === tank.rank);
    const first = group[0] ?? tank;
    const faults: string[] = [];
    if (tank.share !== first.share) {
      faults.push(
        `${named(tank)} shares by ${tank.share} and tank “${first.name}” by ${first.share}; tanks of the same rank share alike.`,
      );
    }
    const feeder = tanks.find(({ feeds }, k) => k !== i && feeds === tank.id);
    if (tank.share === 'level' && group.length > 1 && feeder) {
      faults.push(
        `${named(tank)} shares by level but is fed by tank “${feeder.name}”, so its level cannot fall with the others; share by volume.`,
      );
    }
    return faults;
  });
}
