/**
 * The lessons' sums by hand, on the bare JSON: point masses for the balance (FAA-H-8083-1B, chapter 2: CG = ΣM/ΣW), closed
 * forms for boxes and cylinders. Nothing of the bench's own is used.
 */

interface JsonPart {
  id: string;
  massG: number;
  positionMm: [number, number, number];
  shape: { kind: string; lengthMm: number; widthMm: number; heightMm: number; diameterMm: number };
  plusMinusG?: number;
  plusMinusMm?: number;
}

interface JsonTank extends Omit<JsonPart, 'massG'> {
  emptyMassG: number;
}

export interface JsonAircraft {
  bareAirframe: {
    massG: number;
    stationMm: number;
    buttlineMm: number;
    plusMinusG: number;
    plusMinusMm: number;
  };
  fuel: { densityGPerMl: number } | null;
  tanks: JsonTank[];
  parts: JsonPart[];
}

export interface Weight {
  readonly id: string;
  readonly g: number;
  /** Station and buttline, mm. */
  readonly at: readonly [number, number];
}

/** Everything that weighs, with so much in each tank, ml, each tank's fuel at its middle unless told otherwise. */
export function weights(aircraft: JsonAircraft, ml: Readonly<Record<string, number>> = {}): Weight[] {
  const { bareAirframe: bare, parts, tanks, fuel } = aircraft;
  return [
    { id: 'bare', g: bare.massG, at: [bare.stationMm, bare.buttlineMm] },
    ...parts.map(({ id, massG, positionMm: [x, y] }): Weight => ({ id, g: massG, at: [x, y] })),
    ...tanks.map(
      ({ id, emptyMassG, positionMm: [x, y] }): Weight => ({
        id,
        g: emptyMassG + (ml[id] ?? 0) * (fuel?.densityGPerMl ?? 0),
        at: [x, y],
      }),
    ),
  ];
}

export const massOf = (list: readonly Weight[]): number => list.reduce((sum, { g }) => sum + g, 0);

/** ΣM/ΣW along an axis: 0 station, 1 buttline. */
export const cgOf = (list: readonly Weight[], axis: 0 | 1 = 0): number =>
  list.reduce((sum, { g, at }) => sum + g * at[axis], 0) / massOf(list);

/** What a tank that is a box holds, ml. */
export const boxMl = ({ shape }: Pick<JsonTank, 'shape'>): number =>
  (shape.lengthMm * shape.widthMm * shape.heightMm) / 1000;

/** The list with one thing at another station or buttline. */
export const movedTo = (
  list: readonly Weight[],
  id: string,
  station: number | null,
  buttline: number | null = null,
): Weight[] =>
  list.map((each) =>
    each.id === id ? { ...each, at: [station ?? each.at[0], buttline ?? each.at[1]] } : each,
  );

/**
 * FAA Aviation Maintenance Technician Handbook – General, p. 4-23: ballast = W · (distance the CG is out) / (arm from ballast to
 * the affected limit). With W the mass without the ballast it is exact.
 */
export const ballastByFaa = (massG: number, cgMm: number, wantedMm: number, ballastMm: number): number =>
  (massG * (cgMm - wantedMm)) / (wantedMm - ballastMm);

/**
 * The ± of the CG's station by the root of the sum of squares (JCGM 100:2008, 5.1.2): ∂x/∂m = (x_i − x)/M, ∂x/∂x_i = m_i/M.
 * The ± of the file are all of the same coverage, so the result has it too.
 */
export function plusMinusByGum(aircraft: JsonAircraft): number {
  const { bareAirframe: bare, parts } = aircraft;
  const all = weights(aircraft);
  const [whole, cg] = [massOf(all), cgOf(all)];
  const measured = [
    { g: bare.massG, x: bare.stationMm, pg: bare.plusMinusG, pmm: bare.plusMinusMm },
    ...parts.map((part) => ({
      g: part.massG,
      x: part.positionMm[0],
      pg: part.plusMinusG!,
      pmm: part.plusMinusMm!,
    })),
  ];
  const squares = measured.map(
    ({ g, x, pg, pmm }) => ((pg * (x - cg)) / whole) ** 2 + ((g * pmm) / whole) ** 2,
  );
  return Math.sqrt(squares.reduce((sum, each) => sum + each, 0));
}
