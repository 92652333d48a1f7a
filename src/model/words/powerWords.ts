import { type Chemistry, cellFigures } from '../../engine/power/cells';
import { listed } from '../document/inWords';
import { shownText } from '../document/names';
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

/** Two figures with as many decimals as it takes to tell them apart, three at most. */
function apart(a: number, b: number, unit: string): readonly [string, string] {
  const digits = [1, 2].find((count) => decimals(a, count) !== decimals(b, count)) ?? 3;
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
  return minutes < 1 ? `${Math.floor(seconds)} s` : minuteWords(minutes);
}

/** How long a flight takes, in the same words; never said to be shorter than it is. */
export function takesWords(seconds: number): string {
  const wholeS = Math.ceil(seconds - 1e-6);
  return wholeS < 60 ? `${wholeS} s` : minuteWords(Math.ceil(wholeS / 60));
}

function minuteWords(minutes: number): string {
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

const named = ({ name }: Part) => `“${shownText(name)}”`;

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
        ? `${named(problem.part)} lasts ${lasts}, and the flight takes ${takesWords(problem.flightS)}.`
        : `${named(problem.part)} lasts ${lasts}: the flight, but not the reserve, ${takesWords(problem.neededS)} in all.`;
    }
    case 'no-flight':
      return 'How long it flies is not stated, so nothing is said of how long packs last.';
    case 'starved':
      return `Nearly used up, ${listed(problem.packs.map(named))} cannot give what is drawn ${problem.when === 'peak' ? 'if everything draws its most at once' : 'at full throttle'}, at any voltage.`;
  }
}

/** "3 cells × 4.20 V = 12.6 V freshly charged". */
export function packVolts({ chemistry, cells }: PowerPack, at: 'fullV' | 'nominalV' | 'emptyV'): string {
  const state = { fullV: 'freshly charged', nominalV: 'on the mean', emptyV: 'nearly used up' }[at];
  const cellV = cellFigures[chemistry][at];
  return `${cells} ${cells === 1 ? 'cell' : 'cells'} × ${cellV.toFixed(2)} V = ${voltWords(cells * cellV)} ${state}`;
}

/** A way from a pack to a part, and what comes of it at the most, V. */
interface SupplyWay {
  /** From the pack on. */
  readonly parts: readonly Part[];
  readonly regulator: Part | null;
  readonly volts: number;
}

/** Of all the ways to a part the one with the highest voltage, for that is the one it has; null where no pack is at its end. */
function highestWay(
  aircraft: Aircraft,
  part: Part,
  state: 'fullV' | 'emptyV',
  below: readonly Part[] = [],
): SupplyWay | null {
  const { pack, fedBy = [] } = part.power ?? {};
  if (pack) {
    return { parts: [part], regulator: null, volts: pack.cells * cellFigures[pack.chemistry][state] };
  }
  const ways = fedBy.flatMap(({ from: id, pastRegulator }): readonly SupplyWay[] => {
    const from = aircraft.parts.find((other) => other.id === id);
    const way = from && !below.includes(from) ? highestWay(aircraft, from, state, [...below, part]) : null;
    if (!from || !way) return [];
    const outputV = pastRegulator ? undefined : from.power?.regulator?.outputV;
    return outputV === undefined ? [way] : [{ ...way, regulator: from, volts: Math.min(way.volts, outputV) }];
  });
  const [highest] = ways.toSorted((a, b) => b.volts - a.volts);
  return highest ? { ...highest, parts: [...highest.parts, part] } : null;
}

/** How the figures of a problem come about, a line for each step. */
export function powerWorking(aircraft: Aircraft, problem: PowerProblem): readonly string[] {
  switch (problem.kind) {
    case 'too-high':
    case 'too-low': {
      const state = problem.kind === 'too-high' ? 'fullV' : 'emptyV';
      const way = highestWay(aircraft, problem.part, state);
      const [source] = way?.parts ?? [];
      const { pack } = source?.power ?? {};
      if (!way || !source || !pack) return [];
      const outputV = way.regulator?.power?.regulator?.outputV;
      return [
        `${source.name}: ${packVolts(pack, state)}`,
        ...(way.regulator && outputV !== undefined
          ? [`${way.regulator.name} brings it to at most ${voltWords(outputV)}`]
          : []),
        `${way.parts.map(({ name }) => name).join(' → ')}: ${voltWords(problem.volts)}`,
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
        `Needed: ${takesWords(problem.flightS)} and the reserve, ${takesWords(problem.neededS)} in all`,
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
