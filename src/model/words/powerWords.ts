import { type Chemistry, cellFigures } from '../../engine/power/cells';
import { listed } from '../document/inWords';
import type { Aircraft, Part, PowerPack } from '../document/types';
import type { Carrier, PowerProblem } from '../power/powerProblems';

export const chemistryNames: Readonly<Record<Chemistry, string>> = {
  lipo: 'LiPo',
  lihv: 'LiPo, 4.35 V',
  liion: 'Li-ion',
  life: 'LiFe',
  nimh: 'NiMH',
};

const decimals = (value: number, digits: number) => value.toFixed(digits);

/** Two figures with as many decimals as it takes to tell them apart. */
function apart(a: number, b: number, unit: string): readonly [string, string] {
  const digits = decimals(a, 1) === decimals(b, 1) ? 2 : 1;
  return [`${decimals(a, digits)} ${unit}`, `${decimals(b, digits)} ${unit}`];
}

export const voltWords = (volts: number): string => `${decimals(volts, 1)} V`;

export function ampWords(amps: number): string {
  if (amps < 1) return `${Math.round(amps * 1000)} mA`;
  return `${decimals(amps, amps < 10 ? 1 : 0)} A`;
}

/** "12 min", "1 h 25 min"; never said to last longer than it does. */
export function lastsWords(seconds: number): string {
  const minutes = Math.floor(seconds / 60);
  if (minutes < 1) return `${Math.floor(seconds)} s`;
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  if (hours === 0) return `${minutes} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** "2 faults", "1 fault, 1 caution". */
export function powerCount(problems: readonly PowerProblem[]): string {
  const counted = (severity: PowerProblem['severity'], word: string) => {
    const count = problems.filter((problem) => problem.severity === severity).length;
    return count > 0 ? [`${count} ${word}${count === 1 ? '' : 's'}`] : [];
  };
  const words = [...counted('bad', 'fault'), ...counted('caution', 'caution')];
  if (words.length > 0) return words.join(', ');
  return problems.length > 0 ? 'flight not stated' : '';
}

const named = ({ name }: Part) => `“${name}”`;

const CARRIERS: Readonly<Record<Carrier, (part: Part, to: Part | null) => string>> = {
  pack: (part) => `${named(part)} gives`,
  regulator: (part) => `The regulator of ${named(part)} gives`,
  connector: (part, to) => `The connector from ${named(part)} to ${to ? named(to) : 'what it feeds'} carries`,
};

/** What is wrong, in one sentence. */
export function powerSentence(problem: PowerProblem): string {
  switch (problem.kind) {
    case 'too-high': {
      const [volts, most] = apart(problem.volts, problem.mostV, 'V');
      return `${named(problem.part)} gets up to ${volts} and takes at most ${most}.`;
    }
    case 'too-low': {
      const [volts, least] = apart(problem.volts, problem.leastV, 'V');
      const when = problem.when === 'peak' ? ' while it draws its most' : '';
      return `${named(problem.part)} gets only ${volts}${when} once the packs are nearly used up, and needs ${least}.`;
    }
    case 'unfed':
      return `Nothing feeds ${named(problem.part)}.`;
    case 'idle-pack':
      return `${named(problem.part)} feeds nothing.`;
    case 'over-current': {
      const [amps, most] = apart(problem.amps, problem.mostA, 'A');
      const when = problem.when === 'peak' ? ' if everything draws its most at once' : ' at full throttle';
      return `${CARRIERS[problem.carrier](problem.part, problem.to)} ${amps}${when}, and is good for ${most}.`;
    }
    case 'falls-together':
      return problem.severity === 'caution'
        ? `${named(problem.part)} feeds control and motor: the controller must stop the motor while enough is left to steer.`
        : `If ${named(problem.part)} fails, control is lost together with the engine.`;
    case 'unlike-packs':
      return `${listed(problem.packs.map(named))} differ and meet at ${named(problem.part)}: unless it keeps them apart, one charges the other.`;
    case 'too-short': {
      const lasts = lastsWords(problem.lastsS);
      return problem.severity === 'bad'
        ? `${named(problem.part)} lasts ${lasts}, and the flight takes ${lastsWords(problem.flightS)}.`
        : `${named(problem.part)} lasts ${lasts}: the flight, but not the reserve, ${lastsWords(problem.neededS)} in all.`;
    }
    case 'no-flight':
      return 'How long it flies is not stated, so nothing is said of how long packs last.';
    case 'starved':
      return 'More current is drawn than the packs can give at any voltage.';
  }
}

/** "3 cells × 4.20 V = 12.6 V freshly charged". */
export function packVolts({ chemistry, cells }: PowerPack, at: 'fullV' | 'nominalV' | 'emptyV'): string {
  const state = { fullV: 'freshly charged', nominalV: 'on the mean', emptyV: 'nearly used up' }[at];
  const cellV = cellFigures[chemistry][at];
  return `${cells} ${cells === 1 ? 'cell' : 'cells'} × ${cellV.toFixed(2)} V = ${voltWords(cells * cellV)} ${state}`;
}

/** The feeders of a part up to a pack, that part first; the first way there is. */
function wayTo(aircraft: Aircraft, part: Part): readonly Part[] {
  const way = [part];
  for (;;) {
    const supply = way.at(-1)?.power?.fedBy?.[0];
    const from = aircraft.parts.find(({ id }) => id === supply?.from);
    if (!from || way.includes(from)) return way;
    way.push(from);
  }
}

/** How the figures of a problem come about, a line for each step. */
export function powerWorking(aircraft: Aircraft, problem: PowerProblem): readonly string[] {
  switch (problem.kind) {
    case 'too-high':
    case 'too-low': {
      const way = wayTo(aircraft, problem.part);
      const pack = way.at(-1)?.power?.pack;
      const state = problem.kind === 'too-high' ? 'fullV' : 'emptyV';
      const regulated = way.slice(1).find(({ power }) => power?.regulator);
      return [
        ...(pack ? [`${way.at(-1)?.name}: ${packVolts(pack, state)}`] : []),
        ...(regulated?.power?.regulator
          ? [`${regulated.name} brings it to at most ${voltWords(regulated.power.regulator.outputV)}`]
          : []),
        `${way
          .toReversed()
          .map(({ name }) => name)
          .join(' → ')}: ${voltWords(problem.volts)}`,
      ];
    }
    case 'too-short': {
      const pack = problem.part.power?.pack;
      if (!pack) return [];
      const usable = usableMah(pack);
      const meanA = (usable * 3.6) / problem.lastsS;
      return [
        `To be used: ${Math.round(usable)} of ${pack.capacityMah} mAh`,
        `${Math.round(usable)} mAh ÷ ${ampWords(meanA)} on the mean = ${lastsWords(problem.lastsS)}`,
        `Needed: ${lastsWords(problem.flightS)} and the reserve, ${lastsWords(problem.neededS)} in all`,
      ];
    }
    case 'falls-together':
      return [`Lost with it: ${problem.lost.map(({ name }) => name).join(', ')}`];
    case 'over-current':
    case 'unfed':
    case 'idle-pack':
    case 'unlike-packs':
    case 'no-flight':
    case 'starved':
      return [];
  }
}

/** What is to be used of a pack, mAh. */
const usableMah = ({ chemistry, capacityMah, usablePct }: PowerPack): number =>
  capacityMah * (usablePct === undefined ? cellFigures[chemistry].usableShare : usablePct / 100);
