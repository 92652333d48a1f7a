import { type Chemistry, typicalPackMass } from '../../engine/power/cells';
import { replacePart } from '../document/edit';
import type { Aircraft, Part, PartPower, PowerPack, PowerUse } from '../document/types';

/** Something that draws current, with figures that are typical for it. */
export interface TypicalUse {
  readonly name: string;
  readonly use: PowerUse;
}

type Line = readonly [
  name: string,
  kind: PowerUse['kind'],
  minV: number,
  maxV: number,
  meanA: number,
  peakA: number,
];

/**
 * Typical figures of what draws current: common practice, no source, rounded; a meter's reading replaces them. Means are
 * those of flying, peaks those of a servo held still or of a start.
 */
const lines: readonly Line[] = [
  ['Receiver', 'receiver', 3.6, 9, 0.12, 0.2],
  ['Servo, micro', 'servo', 4.8, 6, 0.1, 0.8],
  ['Servo, standard, up to 6 V', 'servo', 4.8, 6, 0.2, 1.5],
  ['Servo, standard, up to 8.4 V', 'servo', 4.8, 8.4, 0.25, 2],
  ['Servo, large, up to 8.4 V', 'servo', 6, 8.4, 0.5, 5],
  ['Gyro or autopilot', 'stabiliser', 4.5, 9, 0.15, 0.3],
  ['Ignition', 'ignition', 4.8, 8.4, 0.5, 1.2],
  ['Engine control of a turbine', 'engineControl', 7, 12.6, 0.4, 1],
  ['Camera', 'camera', 5, 9, 0.6, 1],
  ['Video or telemetry sender', 'sender', 5, 17, 0.4, 0.8],
  ['Lights', 'light', 5, 12.6, 0.5, 0.8],
  ['Valve or retract', 'valve', 4.8, 8.4, 0.1, 1.5],
  ['Something else', 'other', 4.8, 8.4, 0.1, 0.2],
];

export const typicalUses: readonly TypicalUse[] = [
  ...lines.map(
    ([name, kind, minV, maxV, meanA, peakA]): TypicalUse => ({
      name,
      use: { kind, minV, maxV, meanA, peakA },
    }),
  ),
  {
    name: 'Fuel pump',
    use: { kind: 'fuelPump', minV: 3, maxV: 12.6, meanA: 3, peakA: 5, idleA: 0.8, followsThrottle: true },
  },
  {
    name: 'Motor with its controller',
    use: { kind: 'motor', minV: 9, maxV: 17.4, meanA: 30, peakA: 40, idleA: 0, followsThrottle: true },
  },
];

/** A regulator as many are sold (common practice, no source). */
export const typicalRegulator: PartPower['regulator'] = { way: 'switching', outputV: 6, maxA: 10 };

export const typicalPack: PowerPack = { chemistry: 'lipo', cells: 2, capacityMah: 2200 };

/** So many cells of a kind, whose capacity makes up the mass of the part: where a pack that is aboard already begins. */
export function packOfMass(part: Part, chemistry: Chemistry, cells: number): PowerPack {
  const perMah = typicalPackMass(chemistry, cells, 1).massG;
  const capacityMah = Math.max(100, Math.round(part.massG / perMah / 100) * 100);
  return { chemistry, cells, capacityMah };
}

/** Whether all figures are the same; who read them makes no difference. */
export const isSameUse = (a: PowerUse, b: PowerUse | undefined): boolean =>
  b !== undefined &&
  a.kind === b.kind &&
  a.minV === b.minV &&
  a.maxV === b.maxV &&
  a.meanA === b.meanA &&
  a.peakA === b.peakA &&
  (a.idleA ?? 0) === (b.idleA ?? 0) &&
  (a.followsThrottle ?? false) === (b.followsThrottle ?? false);

/** Masses so many times its spread away from the typical one are not like it. */
const FAR = 2;

/** What a part that is a pack commonly weighs, g, ± 95 %, and from where on a mass is far from that; null for anything else. */
export function typicalMassOf({ power }: Part) {
  if (!power?.pack) return null;
  const { chemistry, cells, capacityMah } = power.pack;
  const { massG, plusMinusG } = typicalPackMass(chemistry, cells, capacityMah);
  return { massG, plusMinusG, leastG: massG - FAR * plusMinusG, mostG: massG + FAR * plusMinusG };
}

/** A pack, and the other one of a mirrored pair, at its typical mass, whole g, marked so. */
export function withTypicalMass(aircraft: Aircraft, id: string): Aircraft {
  const part = aircraft.parts.find((other) => other.id === id);
  const typical = part && typicalMassOf(part);
  if (!part || !typical) return aircraft;
  const { weighedOn: _day, inertiaGmm2: _inertia, ...rest } = part;
  const after: Part = {
    ...rest,
    massG: Math.round(typical.massG),
    plusMinusG: Math.round(typical.plusMinusG),
    massFrom: 'typical',
  };
  return replacePart(aircraft, part, after);
}
