import type { GridCase, GridPart } from './gridCases';

/** The best of a grid: keeps the margin wanted or not, g, mm. */
export interface GridBest {
  readonly keeps: boolean;
  readonly ballastG: number;
  readonly marginMm: number;
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly long: number;
  readonly wide: number;
  readonly high: number;
}

/** Air to the wall and between things, mm, as the search keeps them. */
const AIR_MM = 0.3;
const APART_MM = 1;

const clear = (a: Box, b: Box) =>
  Math.abs(a.x - b.x) >= (a.long + b.long) / 2 + APART_MM ||
  Math.abs(a.y - b.y) >= (a.wide + b.wide) / 2 + APART_MM ||
  Math.abs(a.z - b.z) >= (a.high + b.high) / 2 + APART_MM;

/** A box with any side down: every order of its edges. */
const anySideDown = ([a, b, c]: GridPart['sizeMm']) => [
  [a, b, c],
  [b, a, c],
  [a, c, b],
  [c, a, b],
  [b, c, a],
  [c, b, a],
];

/** All places of a part on the grid: along, at either side or in the middle, and turned where it may be. */
function placesOn({ tube }: GridCase, { sizeMm, turns, stationMm }: GridPart, stepMm: number) {
  const ways = turns ? anySideDown(sizeMm) : [[...sizeMm]];
  return ways.flatMap(([long = 0, wide = 0, high = 0]): Box[] => {
    const [low, highest] = [tube.fromMm + long / 2 + AIR_MM, tube.toMm - long / 2 - AIR_MM];
    const [side, above] = [wide, high].map((mm) => tube.halfMm - AIR_MM - mm / 2) as [number, number];
    if (side < 0 || above < 0) return [];
    // It stands as high as it stood, or where that is too high, with its middle where it was.
    const raised = (high - sizeMm[2]) / 2;
    const z = raised <= above ? raised : 0;
    const xs = [low, highest, stationMm];
    for (let x = low; x < highest; x += stepMm) xs.push(x);
    return xs.flatMap((x) => [-side, 0, side].map((y) => ({ x, y, z, long, wide, high })));
  });
}

/** What the lead needs, weighs and pulls: even along its way. Null where it does not reach. */
function wire({ lead }: GridCase, a: Box, b: Box): { massG: number; momentGmm: number } | null {
  if (!lead) return { massG: 0, momentGmm: 0 };
  const via = lead.waypointMm === null ? [] : [{ x: lead.waypointMm, y: 0, z: 0 }];
  const points = [a, ...via, b];
  let [runMm, moment] = [0, 0];
  for (let i = 1; i < points.length; i++) {
    const [p, q] = [points[i - 1]!, points[i]!];
    const mm = Math.hypot(p.x - q.x, p.y - q.y, p.z - q.z);
    runMm += mm;
    moment += (mm * (p.x + q.x)) / 2;
  }
  if (runMm > lead.lengthMm) return null;
  const massG = lead.gPerMm * lead.lengthMm;
  return { massG, momentGmm: runMm > 0 ? (massG * moment) / runMm : massG * a.x };
}

/** Grids from the finest, mm, and how many choices of places are not too many. */
const STEPS_MM = [8, 12, 16, 24, 48, 96];
const MOST_CHOICES = 2e6;

/** The places of all parts on the finest grid that is not too much. */
function gridOf(one: GridCase): Box[][] {
  const grids = STEPS_MM.map((stepMm) => one.parts.map((part) => placesOn(one, part, stepMm)));
  const choices = (places: Box[][]) => places.reduce((product, { length }) => product * length, 1);
  return grids.find((places) => choices(places) < MOST_CHOICES) ?? grids.at(-1)!;
}

/** Tries every choice of places on a grid with every amount of ballast. */
export function bestOnGrid(one: GridCase, wantedMm: number): GridBest | null {
  const { parts, frame, band, spot } = one;
  const places = gridOf(one);
  let best: GridBest | null = null;
  const settle = (boxes: readonly Box[]) => {
    const pull = wire(one, boxes[0]!, boxes[1]!);
    if (!pull) return;
    let [massG, momentGmm] = [frame.massG + pull.massG, frame.massG * frame.stationMm + pull.momentGmm];
    boxes.forEach(({ x }, i) => {
      massG += parts[i]!.massG;
      momentGmm += parts[i]!.massG * x;
    });
    for (let grams = 0; grams <= spot.mostG; grams += spot.stepG) {
      if (best?.keeps && grams > best.ballastG) return;
      const long = grams * spot.perG;
      if (long > 56 || long / 2 > spot.halfMm) return;
      const stack: Box = { x: spot.stationMm, y: 0, z: 0, long, wide: 20, high: 20 };
      if (grams > 0 && boxes.some((box) => !clear(stack, box))) return;
      const cgMm = (momentGmm + grams * spot.stationMm) / (massG + grams);
      const marginMm = Math.min(cgMm - band.forwardMm, band.aftMm - cgMm);
      if (marginMm < 0) continue;
      const found = { keeps: marginMm >= wantedMm, ballastG: grams, marginMm };
      if (!best || isBetter(found, best)) best = found;
    }
  };
  const put = (boxes: readonly Box[]) => {
    if (boxes.length === parts.length) return settle(boxes);
    for (const box of places[boxes.length]!) {
      if (boxes.every((other) => clear(box, other))) put([...boxes, box]);
    }
  };
  put([]);
  return best;
}

export function isBetter(a: GridBest, b: GridBest, sameMm = 0): boolean {
  if (a.keeps !== b.keeps) return a.keeps;
  if (a.ballastG !== b.ballastG) return a.ballastG < b.ballastG;
  return a.marginMm > b.marginMm + sameMm;
}
