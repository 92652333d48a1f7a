import { readFileSync } from 'node:fs';
import { type Balance, balanceAt, LEVEL } from '../../src/model/balance/balance';
import type { Aircraft, Part, Surface } from '../../src/model/document/types';
import { parseAircraft } from '../../src/model/reading/read';

export const NAMES = ['sandmartin', 'fieldfare', 'whimbrel', 'corncrake'] as const;
export type DemoName = (typeof NAMES)[number];

export const demoText = (name: DemoName): string =>
  readFileSync(new URL(`../../demo-data/${name}.json`, import.meta.url), 'utf8');

/** A demo aircraft; throws with every fault when the file is not sound. */
export function demo(name: DemoName): Aircraft {
  const read = parseAircraft(demoText(name));
  if (!read.ok) throw new Error(read.faults.map((fault) => fault.sentence).join('\n'));
  return read.aircraft;
}

export const balanced = (aircraft: Aircraft, fuelFraction: number): Balance =>
  balanceAt(aircraft, { fuelFraction, down: LEVEL });

/** The CG, which every demo has. */
export function cgOf({ cgMm }: Balance): readonly [number, number, number] {
  if (!cgMm) throw new Error('no mass');
  return cgMm;
}

export function partOf({ parts }: Aircraft, id: string): Part {
  const part = parts.find((each) => each.id === id);
  if (!part) throw new Error(`no part "${id}"`);
  return part;
}

export function surfaceOf({ structure }: Aircraft, id: string): Surface {
  const element = structure.find((each) => each.id === id);
  if (element?.kind !== 'surface') throw new Error(`no surface "${id}"`);
  return element;
}

export const without = (aircraft: Aircraft, ...ids: string[]): Aircraft => ({
  ...aircraft,
  parts: aircraft.parts.filter((part) => !ids.includes(part.id)),
});

export const withPartAt = (aircraft: Aircraft, id: string, positionMm: Part['positionMm']): Aircraft => ({
  ...aircraft,
  parts: aircraft.parts.map((part) => (part.id === id ? { ...part, positionMm } : part)),
});
