import { lastPerObject, perObject, sameList } from '../../engine/memory/memory';
import { type PowerEndurance, packEndurance } from '../../engine/power/packEndurance';
import type { PowerFlow } from '../../engine/power/types';
import type { Aircraft, AircraftKind, Part, PowerUse } from '../document/types';
import { drawnPhases, type PowerPlan, peakOf, powerPlan } from './draws';
import { atFull, flowAt, lostWithout, TOUCH, wiringIslands } from './flows';
import { type Wiring, wiringOf } from './wiring';

/** How bad it is: `bad` must not fly so, `caution` is worth a second look, `unknown` cannot be said. */
export type PowerSeverity = 'bad' | 'caution' | 'unknown';

/** What carries a current. */
export type Carrier = 'pack' | 'regulator' | 'connector';

/** One thing that is wrong with the wiring. Volts, amperes, seconds. */
export type PowerProblem =
  /** More than it takes: by a freshly charged pack, nothing drawn. */
  | {
      readonly kind: 'too-high';
      readonly severity: 'bad';
      readonly part: Part;
      readonly volts: number;
      readonly mostV: number;
    }
  /** Less than it works at, packs nearly used up: always, or only while it draws its most. */
  | {
      readonly kind: 'too-low';
      readonly severity: 'bad' | 'caution';
      readonly part: Part;
      readonly volts: number;
      readonly leastV: number;
      readonly when: 'mean' | 'peak';
    }
  | { readonly kind: 'unfed'; readonly severity: 'bad' | 'caution'; readonly part: Part }
  /** Feeds nothing. */
  | { readonly kind: 'idle-pack'; readonly severity: 'caution'; readonly part: Part }
  /** More current than is good for it: on the mean at full throttle, or only when everything draws its most at once. */
  | {
      readonly kind: 'over-current';
      readonly severity: 'bad' | 'caution';
      readonly carrier: Carrier;
      readonly part: Part;
      /** Of a connector, what it feeds. */
      readonly to: Part | null;
      readonly amps: number;
      readonly mostA: number;
      readonly when: 'mean' | 'peak';
    }
  /** When this pack fails, control and engine are lost together. */
  | {
      readonly kind: 'falls-together';
      readonly severity: 'bad' | 'caution';
      readonly part: Part;
      readonly lost: readonly Part[];
    }
  /** Packs of different cells joined without anything that keeps them apart. */
  | {
      readonly kind: 'unlike-packs';
      readonly severity: 'caution';
      readonly part: Part;
      readonly packs: readonly Part[];
    }
  | {
      readonly kind: 'too-short';
      /** `caution` where the flight is done and only the reserve is missing. */
      readonly severity: 'bad' | 'caution';
      readonly part: Part;
      readonly lastsS: number;
      readonly flightS: number;
      readonly neededS: number;
    }
  /** Nobody says how long it flies. */
  | { readonly kind: 'no-flight'; readonly severity: 'unknown' }
  /** Nearly used up, these packs could not give it at any voltage: on the mean, or only when everything draws its most at once. */
  | {
      readonly kind: 'starved';
      readonly severity: 'bad' | 'caution';
      readonly packs: readonly Part[];
      readonly when: 'mean' | 'peak';
    };

const CONTROL: readonly PowerUse['kind'][] = ['receiver', 'servo', 'stabiliser'];
const ENGINE: readonly PowerUse['kind'][] = ['ignition', 'engineControl', 'fuelPump', 'motor'];

const isOf = (kinds: readonly PowerUse['kind'][]) => (part: Part) =>
  part.power?.use !== undefined && kinds.includes(part.power.use.kind);
export const isControl = isOf(CONTROL);
export const isEngine = isOf(ENGINE);

/** What is wrong with the wiring of everything aboard, the worst first; null where nothing is wired. */
export const powerProblems = perObject((aircraft: Aircraft): readonly PowerProblem[] | null => {
  const wiring = wiringOf(aircraft);
  return wiring && lastProblems(bench, wiring, powerPlan(aircraft), aircraft.kind);
});

const bench = {};

/** A part that is only moved is the same to its wiring. */
const lastProblems = lastPerObject(
  (_bench: object, wiring: Wiring, plan: PowerPlan | null, kind: AircraftKind): readonly PowerProblem[] =>
    wiringProblems(wiring, plan, kind),
  ([wiring, plan, kind], [nowWiring, nowPlan, nowKind]) =>
    kind === nowKind && sameFlight(plan, nowPlan) && sameList(causesOf(wiring), causesOf(nowWiring)),
);

const causesOf = ({ packs, units, net }: Wiring): readonly unknown[] => [
  ...[...packs, ...units].flatMap(({ id, name, power }) => [id, name, power]),
  ...net.feeds.map(({ ohm }) => ohm),
];

const sameFlight = (a: PowerPlan | null, b: PowerPlan | null): boolean =>
  a === b || (a !== null && b !== null && a.phases === b.phases && a.neededS === b.neededS);

const ORDER: readonly PowerSeverity[] = ['bad', 'caution', 'unknown'];

/** The same of a wiring by itself. */
export function wiringProblems(
  wiring: Wiring,
  plan: PowerPlan | null,
  kind: AircraftKind,
): readonly PowerProblem[] {
  const found = [
    ...unfedOf(wiring),
    ...idleOf(wiring),
    ...unlikeOf(wiring),
    ...flowProblems(wiring, plan, kind),
    ...(plan === null ? [{ kind: 'no-flight', severity: 'unknown' } as const] : []),
  ];
  return found.toSorted((a, b) => ORDER.indexOf(a.severity) - ORDER.indexOf(b.severity));
}

/** What follows from volts and amperes, in each piece of the wiring that nothing joins to another. */
function flowProblems(wiring: Wiring, plan: PowerPlan | null, kind: AircraftKind): readonly PowerProblem[] {
  const checks: readonly ((island: Wiring) => readonly PowerProblem[])[] = [
    starvedOf,
    tooHighOf,
    tooLowOf,
    overCurrentOf,
    (island) => fallsTogetherOf(island, kind),
    ...(plan ? [(island: Wiring) => tooShortOf(island, plan)] : []),
  ];
  return checks.flatMap((check) => wiringIslands(wiring).flatMap(check));
}

function starvedOf(wiring: Wiring): readonly PowerProblem[] {
  const { packs } = wiring;
  if (!flowAt(wiring, 'emptyV', atFull)) return [{ kind: 'starved', severity: 'bad', packs, when: 'mean' }];
  if (!flowAt(wiring, 'emptyV', peakOf))
    return [{ kind: 'starved', severity: 'caution', packs, when: 'peak' }];
  return [];
}

function unfedOf({ units, feeds }: Wiring): readonly PowerProblem[] {
  return units.flatMap((part): readonly PowerProblem[] => {
    if (feeds.some(({ to }) => to.id === part.id)) return [];
    return [{ kind: 'unfed', severity: isControl(part) || isEngine(part) ? 'bad' : 'caution', part }];
  });
}

function idleOf({ packs, feeds }: Wiring): readonly PowerProblem[] {
  return packs.flatMap((part): readonly PowerProblem[] =>
    feeds.some(({ from }) => from.id === part.id) ? [] : [{ kind: 'idle-pack', severity: 'caution', part }],
  );
}

/** Packs that stand on one and the same input must be alike, or it must keep them apart. */
function unlikeOf({ units, feeds }: Wiring): readonly PowerProblem[] {
  return units.flatMap((part): readonly PowerProblem[] => {
    // A regulator with several inputs is made to keep them apart.
    if (part.power?.regulator) return [];
    const packs = feeds
      .filter(({ to, from }) => to.id === part.id && from.power?.pack)
      .map(({ from }) => from);
    const kinds = new Set(packs.map(({ power }) => `${power?.pack?.chemistry} ${power?.pack?.cells}`));
    return kinds.size > 1 ? [{ kind: 'unlike-packs', severity: 'caution', part, packs }] : [];
  });
}

function tooHighOf(wiring: Wiring): readonly PowerProblem[] {
  const flow = flowAt(wiring, 'fullV', () => 0);
  return wiring.units.flatMap((part): readonly PowerProblem[] => {
    const volts = flow?.unitV.get(part.id);
    const mostV = part.power?.use?.maxV;
    if (volts == null || mostV === undefined || volts <= mostV + TOUCH) return [];
    return [{ kind: 'too-high', severity: 'bad', part, volts, mostV }];
  });
}

function tooLowOf(wiring: Wiring): readonly PowerProblem[] {
  const mean = flowAt(wiring, 'emptyV', atFull);
  // Whoever gets enough while all draw their most gets enough while it alone does.
  const allPeak = flowAt(wiring, 'emptyV', peakOf);
  return wiring.units.flatMap((part): readonly PowerProblem[] => {
    const leastV = part.power?.use?.minV;
    const volts = mean?.unitV.get(part.id);
    if (leastV === undefined || volts == null) return [];
    const low = (seenV: number) => seenV < leastV - TOUCH;
    if (low(volts)) return [{ kind: 'too-low', severity: 'bad', part, volts, leastV, when: 'mean' }];
    if (allPeak && !low(allPeak.unitV.get(part.id) ?? 0)) return [];
    const peak = flowAt(wiring, 'emptyV', (other) => (other.id === part.id ? peakOf(other) : atFull(other)));
    const atPeakV = peak?.unitV.get(part.id);
    if (atPeakV == null || !low(atPeakV)) return [];
    return [{ kind: 'too-low', severity: 'caution', part, volts: atPeakV, leastV, when: 'peak' }];
  });
}

function overCurrentOf(wiring: Wiring): readonly PowerProblem[] {
  const [mean, peak] = [flowAt(wiring, 'emptyV', atFull), flowAt(wiring, 'emptyV', peakOf)];
  const over = (
    carrier: Carrier,
    part: Part,
    to: Part | null,
    mostA: number | undefined,
    ampsOf: (flow: PowerFlow) => number | undefined,
  ): readonly PowerProblem[] => {
    // Where it is not to be had at all there is no figure, and that is said.
    const [meanA, peakA] = [mean, peak].map((flow) => Math.abs((flow && ampsOf(flow)) ?? 0)) as [
      number,
      number,
    ];
    if (mostA === undefined || Math.max(meanA, peakA) <= mostA + TOUCH) return [];
    const bad = meanA > mostA + TOUCH;
    const amps = bad ? meanA : peakA;
    return [
      {
        kind: 'over-current',
        severity: bad ? 'bad' : 'caution',
        carrier,
        part,
        to,
        amps,
        mostA,
        when: bad ? 'mean' : 'peak',
      },
    ];
  };
  return [
    ...wiring.packs.flatMap((part) =>
      over('pack', part, null, part.power?.pack?.maxA, ({ packA }) => packA.get(part.id)),
    ),
    ...wiring.units.flatMap((part) =>
      over('regulator', part, null, part.power?.regulator?.maxA, ({ regulatorA }) => regulatorA.get(part.id)),
    ),
    ...wiring.feeds.flatMap(({ from, to, supply }, at) =>
      over('connector', from, to, supply.maxA, ({ feedA }) => feedA[at]),
    ),
  ];
}

function fallsTogetherOf(wiring: Wiring, kind: AircraftKind): readonly PowerProblem[] {
  return wiring.packs.flatMap((part): readonly PowerProblem[] => {
    const lost = lostWithout(wiring, part.id);
    if (!lost.some(isControl) || !lost.some(isEngine)) return [];
    // A motor's own pack that feeds the receiver too is usual; its controller must stop the motor first.
    const usual = kind === 'electric' || kind === 'glider';
    return [{ kind: 'falls-together', severity: usual ? 'caution' : 'bad', part, lost }];
  });
}

/** How long packs last along a flight; null where they cannot give what is drawn. */
export function enduranceOf(
  { net, units }: Pick<Wiring, 'net' | 'units'>,
  plan: PowerPlan,
): PowerEndurance | null {
  try {
    return packEndurance(net, drawnPhases(plan, units));
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return null;
  }
}

function tooShortOf(wiring: Wiring, plan: PowerPlan): readonly PowerProblem[] {
  const endurance = enduranceOf(wiring, plan);
  return wiring.packs.flatMap((part): readonly PowerProblem[] => {
    const lastsS = endurance?.packs.get(part.id)?.emptyAtS ?? Number.POSITIVE_INFINITY;
    const { flightS, neededS } = plan;
    if (lastsS >= neededS) return [];
    return [
      { kind: 'too-short', severity: lastsS < flightS ? 'bad' : 'caution', part, lastsS, flightS, neededS },
    ];
  });
}
