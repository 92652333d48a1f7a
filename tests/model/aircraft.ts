import { readFileSync } from 'node:fs';
import { movedText } from '../../src/commands/moved';
import { blankAircraft } from '../../src/model/document/blank';
import type { Aircraft, MassSource, Part, StructurePiece } from '../../src/model/document/types';

/** The kept file of version 1 as a file of today: an invented petrol aircraft with one element of every kind. */
export const dunlinText = movedText(
  readFileSync(new URL('./reading/files/v1.json', import.meta.url), 'utf8'),
);

/** The same, parsed afresh, to be broken by a test. */
// biome-ignore lint/suspicious/noExplicitAny: tests put wrong things in wrong places.
export const dunlinJson = (): any => JSON.parse(dunlinText);

/** An aircraft of nothing but the given structure and parts. */
export const aircraftOf = (structure: readonly StructurePiece[], parts: readonly Part[] = []): Aircraft => ({
  ...blankAircraft(),
  structure,
  parts,
});

const place = { yawDeg: 0, pitchDeg: 0, rollDeg: 0 } as const;

export const boxPart = (id: string, massG: number, positionMm: readonly [number, number, number]): Part => ({
  id,
  name: id,
  role: 'other',
  shape: { kind: 'box', lengthMm: 100, widthMm: 40, heightMm: 20 },
  massG,
  positionMm,
  ...place,
});

export const boxBlock = (
  id: string,
  positionMm: readonly [number, number, number],
  mass: MassSource,
  sides: 'centre' | 'both' = 'centre',
): StructurePiece => ({
  id,
  kind: 'block',
  name: id,
  sides,
  shape: { kind: 'box', lengthMm: 200, widthMm: 100, heightMm: 50 },
  positionMm,
  ...place,
  mass,
});

/** A plain wing that weighs nothing: it lifts, and leaves every CG where it is. */
export const weightlessWing: Extract<StructurePiece, { kind: 'surface' }> = {
  id: 'wing',
  kind: 'surface',
  name: 'Wing',
  role: 'wing',
  sides: 'both',
  rootMm: [500, 0, 0],
  cantDeg: 0,
  incidenceDeg: 0,
  rootChordMm: 200,
  rootThicknessPct: 10,
  panels: [{ spanMm: 600, tipChordMm: 200, sweepMm: 0, dihedralDeg: 0, twistDeg: 0, tipThicknessPct: 10 }],
  mass: { by: 'weighed', massG: 0 },
};
