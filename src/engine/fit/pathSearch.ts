import type { Pose, Vec3 } from '../geometry/types';
import { lerp } from '../geometry/vec3';
import { seededRandom } from './random';

export interface PathQuery {
  readonly from: Pose;
  readonly to: Pose;
  /** Whether the item can stand so. */
  readonly clear: (pose: Pose) => boolean;
  /** How far its furthest point is from its origin, mm: it says how far a turn carries it. */
  readonly reachMm: number;
  /** Where its origin may go, mm. */
  readonly minMm: Vec3;
  readonly maxMm: Vec3;
  /** How far it may be tilted from its last pose, degrees each way. */
  readonly tiltDeg: number;
  /** No point of it goes further than this between two poses looked at, mm. */
  readonly stepMm: number;
  /** Poses to look at before giving up. */
  readonly budget: number;
  readonly seed: number;
  /** Poses worth trying before random ones. */
  readonly hints?: readonly Pose[];
  /** Gives the way as it was found, detours and all: for whom it is enough that there is one. */
  readonly asFound?: boolean;
}

export interface PathResult {
  /** Poses no further than `stepMm` apart, each of them clear; null when no path was found. */
  readonly poses: readonly Pose[] | null;
  /** Poses looked at. */
  readonly tried: number;
}

interface Node {
  readonly pose: Pose;
  readonly parent: Node | null;
}

/** A pose a share `t` of the way from one to another, angles and place in proportion. */
const poseOnWay = (a: Pose, b: Pose, t: number): Pose => ({
  positionMm: lerp(a.positionMm, b.positionMm, t),
  yawDeg: a.yawDeg + (b.yawDeg - a.yawDeg) * t,
  pitchDeg: a.pitchDeg + (b.pitchDeg - a.pitchDeg) * t,
  rollDeg: a.rollDeg + (b.rollDeg - a.rollDeg) * t,
});

/** At most how far any point of an item of that reach goes on the way between two poses, mm. */
export function poseTravelMm(a: Pose, b: Pose, reachMm: number): number {
  const [p, q] = [a.positionMm, b.positionMm];
  const turnedDeg =
    Math.abs(a.yawDeg - b.yawDeg) + Math.abs(a.pitchDeg - b.pitchDeg) + Math.abs(a.rollDeg - b.rollDeg);
  return Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]) + (reachMm * turnedDeg * Math.PI) / 180;
}

/** Shares of the samples that keep the last pose's angles, and that turn one of them by a right angle. */
const untilted = 0.4;
const quarterTurned = 0.25;
/** Share of the samples that lie near the straight way from end to end: a hatch is a narrow place. */
const nearTheWay = 0.4;
const angles = ['yawDeg', 'pitchDeg', 'rollDeg'] as const;
const mix = (a: number, b: number, t: number): number => a + (b - a) * t;
const shortcuts = 80;

/**
 * Looks for a way from one pose to another through poses that are all clear: two trees of poses, one from
 * each end, grown towards random poses and towards each other; the way found is then shortened. That none
 * was found says nothing about whether there is one.
 * J. J. Kuffner, S. M. LaValle, RRT-Connect, IEEE Int. Conf. Robotics and Automation 2000.
 */
export function findPath(query: PathQuery): PathResult {
  const { from, to, reachMm, stepMm, budget } = query;
  const random = seededRandom(query.seed);
  let tried = 0;
  const clear = (pose: Pose) => {
    tried += 1;
    return query.clear(pose);
  };
  if (!clear(to) || !clear(from)) return { poses: null, tried };

  /** The last clear pose on the straight way from a to b, in steps; a itself when the first step is blocked. */
  const walk = (a: Pose, b: Pose): { readonly pose: Pose; readonly arrived: boolean } => {
    const steps = Math.max(1, Math.ceil(poseTravelMm(a, b, reachMm) / stepMm));
    let pose = a;
    for (let k = 1; k <= steps; k += 1) {
      const next = k === steps ? b : poseOnWay(a, b, k / steps);
      if (tried >= budget || !clear(next)) return { pose, arrived: false };
      pose = next;
    }
    return { pose, arrived: true };
  };

  const grow = (tree: Node[], target: Pose): { readonly node: Node; readonly arrived: boolean } => {
    let near = tree[0]!;
    let least = Number.POSITIVE_INFINITY;
    for (const node of tree) {
      const far = poseTravelMm(node.pose, target, reachMm);
      if (far < least) {
        least = far;
        near = node;
      }
    }
    const { pose, arrived } = walk(near.pose, target);
    if (pose === near.pose) return { node: near, arrived };
    const node: Node = { pose, parent: near };
    tree.push(node);
    return { node, arrived };
  };

  const samplePlace = (): Vec3 => {
    const near = random() < nearTheWay;
    const t = random();
    const off = 0.1 * random();
    const along = (axis: 0 | 1 | 2) => {
      const [low, high] = [query.minMm[axis], query.maxMm[axis]];
      if (!near) return mix(low, high, random());
      return mix(from.positionMm[axis], to.positionMm[axis], t) + off * (random() - 0.5) * (high - low);
    };
    return [along(0), along(1), along(2)];
  };

  const sample = (): Pose => {
    const positionMm = samplePlace();
    const kind = random();
    if (kind < untilted) return { ...to, positionMm };
    if (kind < untilted + quarterTurned) {
      const axis = angles[Math.floor(random() * 3)]!;
      const by = (random() < 0.5 ? 1 : -1) * Math.min(90, query.tiltDeg);
      return { ...to, positionMm, [axis]: to[axis] + by };
    }
    const tilt = () => (2 * random() - 1) * query.tiltDeg;
    return {
      positionMm,
      yawDeg: to.yawDeg + tilt(),
      pitchDeg: to.pitchDeg + tilt(),
      rollDeg: to.rollDeg + tilt(),
    };
  };

  const outside: Node[] = [{ pose: from, parent: null }];
  const inside: Node[] = [{ pose: to, parent: null }];
  let [grown, other] = [inside, outside];
  let target = from;
  // Each hint is for both trees in turn.
  const hints = (query.hints ?? []).flatMap((hint) => [hint, hint]);
  while (tried < budget) {
    const { node } = grow(grown, target);
    const met = grow(other, node.pose);
    if (met.arrived) {
      const [out, home] = grown === outside ? [node, met.node] : [met.node, node];
      const whole = [...trail(out).reverse(), ...trail(home)];
      const poses = query.asFound ? whole : shorten(whole, walk, random);
      return { poses: inSteps(poses, reachMm, stepMm), tried };
    }
    [grown, other] = [other, grown];
    target = hints.shift() ?? sample();
  }
  return { poses: null, tried };
}

function trail(node: Node): Pose[] {
  const poses: Pose[] = [];
  for (let at: Node | null = node; at; at = at.parent) poses.push(at.pose);
  return poses;
}

/** Leaves out detours between random places of a path wherever the straight way is clear. */
function shorten(
  path: readonly Pose[],
  walk: (a: Pose, b: Pose) => { readonly arrived: boolean },
  random: () => number,
): Pose[] {
  const poses = [...path];
  for (let turn = 0; turn < shortcuts && poses.length > 2; turn += 1) {
    const i = Math.floor(random() * (poses.length - 2));
    const j = i + 2 + Math.floor(random() * (poses.length - i - 2));
    if (walk(poses[i]!, poses[j]!).arrived) poses.splice(i + 1, j - i - 1);
  }
  return poses;
}

function inSteps(path: readonly Pose[], reachMm: number, stepMm: number): Pose[] {
  const poses = [path[0]!];
  path.slice(1).forEach((to, i) => {
    const from = path[i]!;
    const steps = Math.ceil(poseTravelMm(from, to, reachMm) / stepMm);
    for (let k = 1; k <= steps; k += 1) poses.push(k === steps ? to : poseOnWay(from, to, k / steps));
  });
  return poses;
}
