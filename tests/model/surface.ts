import type { Surface } from '../../src/model/document/types';

export interface SurfaceFigures {
  readonly id: string;
  readonly spanMm: number;
  readonly rootChordMm: number;
  readonly tipChordMm: number;
}

/** A flat wing of one unswept panel a side, its root leading edge at station 500. */
export const surface = ({ id, spanMm, rootChordMm, tipChordMm }: SurfaceFigures): Surface => ({
  id,
  kind: 'surface',
  name: id,
  role: 'wing',
  sides: 'both',
  rootMm: [500, 0, 0],
  cantDeg: 0,
  incidenceDeg: 0,
  rootChordMm,
  rootThicknessPct: 10,
  panels: [{ spanMm, tipChordMm, sweepMm: 0, dihedralDeg: 0, twistDeg: 0, tipThicknessPct: 10 }],
  mass: { by: 'weighed', massG: 500 },
});
