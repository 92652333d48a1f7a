import type { Flow, FlowPoint, Phase } from './types';

/** Fuel drawn at one moment since the start. */
export interface BurnKnot {
  readonly atS: number;
  readonly drawnMl: number;
}

/** Fuel drawn over time: straight lines between knots, level once the tanks are dry. */
export interface BurnTimeline {
  /** At least one; times increase. One where each phase begins and ends, and one where the tanks run dry. */
  readonly knots: readonly BurnKnot[];
  readonly usableMl: number;
  /** Length of the profile, s. */
  readonly totalS: number;
  /** What the profile draws in all, at most the usable fuel, ml. */
  readonly drawnMl: number;
  /** When the usable fuel is gone, s; null when the profile ends before that. */
  readonly dryAtS: number | null;
}

/** Flow at the outlet at a throttle of 0 to 100 %, ml/min. */
export function flowAt({ idleMlPerMin, fullMlPerMin, table = [] }: Flow, throttlePct: number): number {
  const full: FlowPoint = { throttlePct: 100, mlPerMin: fullMlPerMin };
  let below: FlowPoint = { throttlePct: 0, mlPerMin: idleMlPerMin };
  for (const above of [...table, full]) {
    if (throttlePct <= above.throttlePct || above === full) {
      const share = (throttlePct - below.throttlePct) / (above.throttlePct - below.throttlePct);
      return below.mlPerMin + share * (above.mlPerMin - below.mlPerMin);
    }
    below = above;
  }
  return fullMlPerMin;
}

/**
 * Flies a fuel profile from the start with `usableMl` of usable fuel. Phases follow each other; a phase may last no time or
 * draw nothing. Bad figures give a sentence each, and no timeline.
 */
export function burnTimeline(
  phases: readonly Phase[],
  flow: Flow,
  usableMl: number,
): BurnTimeline | { readonly faults: readonly string[] } {
  const faults = burnFaults(phases, flow, usableMl);
  return faults.length > 0 ? { faults } : fly(phases, flow, usableMl);
}

function fly(phases: readonly Phase[], flow: Flow, usableMl: number): BurnTimeline {
  const knots: BurnKnot[] = [{ atS: 0, drawnMl: 0 }];
  let atS = 0;
  let drawnMl = 0;
  let dryAtS: number | null = usableMl === 0 ? 0 : null;
  for (const { durationS, throttlePct } of phases) {
    if (durationS === 0) continue;
    const perS = flowAt(flow, throttlePct) / 60;
    const leftMl = usableMl - drawnMl;
    if (dryAtS === null && perS * durationS >= leftMl) {
      dryAtS = atS + leftMl / perS;
      if (dryAtS > atS && dryAtS < atS + durationS) knots.push({ atS: dryAtS, drawnMl: usableMl });
    }
    atS += durationS;
    drawnMl = dryAtS === null ? drawnMl + perS * durationS : usableMl;
    knots.push({ atS, drawnMl });
  }
  return { knots, usableMl, totalS: atS, drawnMl, dryAtS };
}

/** Fuel drawn by `atS` seconds into the profile, ml; before the start nothing, after the end what was drawn by then. */
export function drawnAt(timeline: BurnTimeline, atS: number): number {
  const { knots } = timeline;
  const after = knots.findIndex((knot) => knot.atS >= atS);
  if (after < 0) return timeline.drawnMl;
  if (after === 0) return 0;
  const a = knots[after - 1]!;
  const b = knots[after]!;
  return a.drawnMl + ((atS - a.atS) / (b.atS - a.atS)) * (b.drawnMl - a.drawnMl);
}

/** The first moment by which `drawnMl` has been drawn, s; null when the profile never draws so much. */
export function timeAtDrawn(timeline: BurnTimeline, drawnMl: number): number | null {
  const { knots } = timeline;
  const after = knots.findIndex((knot) => knot.drawnMl >= drawnMl);
  if (after < 0) return null;
  if (after === 0) return 0;
  const a = knots[after - 1]!;
  const b = knots[after]!;
  return a.atS + ((drawnMl - a.drawnMl) / (b.drawnMl - a.drawnMl)) * (b.atS - a.atS);
}

/** When only `reserveMl` of usable fuel is left, s; 0 when there is no more at the start, null when the profile leaves more. */
export function timeToReserve(timeline: BurnTimeline, reserveMl: number): number | null {
  return timeAtDrawn(timeline, Math.max(0, timeline.usableMl - reserveMl));
}

/**
 * How long the fuel lasts if the profile is flown again and again, until `reserveMl` of usable fuel is left, s;
 * null when the profile draws nothing. Throws on a profile that `burnTimeline` refuses.
 */
export function endurance(
  phases: readonly Phase[],
  flow: Flow,
  usableMl: number,
  reserveMl = 0,
): number | null {
  const faults = burnFaults(phases, flow, usableMl);
  if (faults.length > 0) throw new RangeError(faults.join(' '));
  const goal = Math.max(0, usableMl - reserveMl);
  const once = fly(phases, flow, Number.POSITIVE_INFINITY);
  if (goal === 0) return 0;
  if (once.drawnMl === 0) return null;
  // The last round is flown in part, or in full when the fuel divides evenly, so it ends where the fuel does.
  const rounds = Math.max(0, Math.ceil(goal / once.drawnMl) - 1);
  const rest = Math.min(goal - rounds * once.drawnMl, once.drawnMl);
  return rounds * once.totalS + timeAtDrawn(once, rest)!;
}

function burnFaults(phases: readonly Phase[], flow: Flow, usableMl: number): string[] {
  const faults: string[] = [];
  const check = (good: boolean, where: string, expected: string, came: number) => {
    if (!good) faults.push(`${where}: expected ${expected}, got ${came}.`);
  };
  check(notNegative(usableMl), 'Usable fuel', '0 ml or more', usableMl);
  check(notNegative(flow.idleMlPerMin), 'Flow at idle', '0 ml/min or more', flow.idleMlPerMin);
  check(notNegative(flow.fullMlPerMin), 'Flow at full throttle', '0 ml/min or more', flow.fullMlPerMin);
  flow.table?.forEach(({ throttlePct, mlPerMin }, i) => {
    const point = `Flow table, point ${i + 1}`;
    const below = flow.table?.[i - 1]?.throttlePct ?? 0;
    const between = throttlePct > below && throttlePct < 100;
    check(between, `${point}, throttle`, `more than ${below} and less than 100 %`, throttlePct);
    check(notNegative(mlPerMin), `${point}, flow`, '0 ml/min or more', mlPerMin);
  });
  phases.forEach(({ name, durationS, throttlePct }, i) => {
    const phase = `Phase ${i + 1} “${name}”`;
    check(notNegative(durationS), `${phase}, duration`, '0 s or more', durationS);
    check(throttlePct >= 0 && throttlePct <= 100, `${phase}, throttle`, '0 to 100 %', throttlePct);
  });
  return faults;
}

const notNegative = (value: number): boolean => value >= 0 && Number.isFinite(value);
