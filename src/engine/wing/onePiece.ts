import { panelEdges } from './panelEdges';
import type { LiftingSurface, WingPanel } from './types';

/** A `centre` surface steeper than this everywhere is a fin: it has no lift to give (share of its length). */
const LEAST_SPREAD = 0.05;

/**
 * A `centre` surface that spreads sideways (a one-piece tail) as the pair it amounts to: moved to the middle
 * and made the mean of itself and its mirror image, since to first order what is uneven rolls but does not
 * lift or pitch. Null for a fin, and for a surface that does not spread to one side all along.
 */
export function onePiecePair(surface: LiftingSurface): LiftingSurface | null {
  const edges = panelEdges(surface);
  const runs = edges.map(({ slopeRad }) => Math.cos(slopeRad));
  const side = Math.sign(runs[0] ?? 0);
  if (side === 0 || runs.some((run) => run * side < LEAST_SPREAD)) return null;
  const knots = [edges[0]?.rootMm, ...edges.map(({ tipMm }) => tipMm)].map((point, k) => ({
    yMm: side * (point?.[1] ?? 0),
    xMm: point?.[0] ?? 0,
    zMm: point?.[2] ?? 0,
    chordMm: k === 0 ? (edges[0]?.panel.rootChordMm ?? 0) : (edges[k - 1]?.panel.tipChordMm ?? 0),
    twistDeg: k === 0 ? (edges[0]?.panel.rootTwistDeg ?? 0) : (edges[k - 1]?.panel.tipTwistDeg ?? 0),
  }));
  const middleMm = ((knots[0]?.yMm ?? 0) + (knots.at(-1)?.yMm ?? 0)) / 2;
  const outs = [...new Set([0, ...knots.map(({ yMm }) => Math.abs(yMm - middleMm))])].sort((a, b) => a - b);
  // Two knots that are mirror images up to rounding are one.
  const kept = outs.filter((out, k) => k === 0 || out - (outs[k - 1] as number) > 1e-6);
  const lines = kept.map((out) => mean(knotAt(knots, middleMm - out), knotAt(knots, middleMm + out)));
  const [root] = lines;
  if (root === undefined) return null;
  return {
    ...surface,
    sides: 'both',
    rootMm: [root.xMm, 0, root.zMm],
    cantDeg: 0,
    panels: lines
      .slice(1)
      .map((tip, k) => panelBetween(lines[k] as Knot, tip, (kept[k + 1] as number) - (kept[k] as number))),
  };
}

interface Knot {
  readonly yMm: number;
  readonly xMm: number;
  readonly zMm: number;
  readonly chordMm: number;
  readonly twistDeg: number;
}

function knotAt(knots: readonly Knot[], yMm: number): Knot {
  const next = Math.max(
    1,
    knots.findIndex((knot) => knot.yMm >= yMm - 1e-9),
  );
  const [a, b] = [knots[next - 1] as Knot, knots[next] as Knot];
  const share = Math.min(1, Math.max(0, (yMm - a.yMm) / (b.yMm - a.yMm)));
  const at = (of: keyof Knot) => a[of] + (b[of] - a[of]) * share;
  return { yMm, xMm: at('xMm'), zMm: at('zMm'), chordMm: at('chordMm'), twistDeg: at('twistDeg') };
}

function mean(a: Knot, b: Knot): Knot {
  const of = (key: keyof Knot) => (a[key] + b[key]) / 2;
  return { yMm: of('yMm'), xMm: of('xMm'), zMm: of('zMm'), chordMm: of('chordMm'), twistDeg: of('twistDeg') };
}

function panelBetween(root: Knot, tip: Knot, spanMm: number): WingPanel {
  return {
    spanMm,
    rootChordMm: root.chordMm,
    tipChordMm: tip.chordMm,
    sweepMm: tip.xMm - root.xMm,
    dihedralDeg: (Math.atan2(tip.zMm - root.zMm, spanMm) * 180) / Math.PI,
    rootTwistDeg: root.twistDeg,
    tipTwistDeg: tip.twistDeg,
  };
}
