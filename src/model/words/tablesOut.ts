import type { Vec3 } from '../../engine/geometry/types';
import type { Positions } from '../airframe/loadSwitches';
import { balanceAt } from '../balance/balance';
import { itemById } from '../document/edit';
import type { Aircraft } from '../document/types';
import { variantName } from '../document/variants';
import { loadStateName } from '../loads/stateName';
import type { StabilityEstimate } from '../stability/stability';
import { csvOf } from './csv';
import { manifestRows } from './manifestRows';

const PARTS_HEAD = [
  'Id',
  'Name',
  'Group',
  'Kind',
  'Mass (g)',
  'Mass from',
  'CG station (mm)',
  'CG buttline (mm)',
  'CG waterline (mm)',
  'Yaw (deg)',
  'Pitch (deg)',
  'Roll (deg)',
  'In the sum',
];

/** All that is aboard as CSV, liquid apart: mm from the datum, g, degrees, whatever the screen's units are. */
export function partsCsv(aircraft: Aircraft): string {
  const rows = manifestRows(aircraft).map(({ id, name, group, role, massG, massFrom, cgMm, counted }) => {
    const item = itemById(aircraft, id);
    return [
      id,
      name,
      group,
      role,
      massG,
      massFrom,
      ...(cgMm ?? [null, null, null]),
      ...(item ? [item.yawDeg, item.pitchDeg, item.rollDeg] : [null, null, null]),
      counted ? 'yes' : 'no',
    ];
  });
  return csvOf(PARTS_HEAD, rows);
}

const MASS_HEAD = [
  'Aircraft',
  'Load state',
  'Fuel left (1 full to 0 dry)',
  'Mass (g)',
  'CG station (mm)',
  'CG buttline (mm)',
  'CG waterline (mm)',
  ...['xx', 'yy', 'zz', 'xy', 'xz', 'yz'].map((entry) => `I${entry} about the CG (g mm2)`),
  'Static margin, estimated (% MAC)',
];

const TENTHS = Array.from({ length: 11 }, (_, tenth) => 1 - tenth / 10);

export interface Shown {
  readonly down: Vec3;
  readonly positions: Positions;
  readonly estimate: StabilityEstimate | null;
}

/**
 * The mass properties of the load state shown as CSV, by tenths of the fuel; one row where nothing burns. Products of inertia
 * are tensor elements, xy = −∫xy dm, x aft, y right, z up.
 */
export function massCsv(aircraft: Aircraft, { down, positions, estimate }: Shown): string {
  const at = (fuelFraction: number) => balanceAt(aircraft, { fuelFraction, down, positions, estimate });
  const states = at(1).travel.length > 1 ? TENTHS : [1];
  const rows = states.map((fuelFraction) => {
    const { massG, cgMm, inertiaAboutCgGmm2: tensor, margin } = at(fuelFraction);
    return [
      variantName(aircraft),
      loadStateName(aircraft, { positions, fuelFraction, massG, cgMm: cgMm ?? [0, 0, 0] }),
      fuelFraction,
      massG,
      ...(cgMm ?? [null, null, null]),
      ...[tensor.xx, tensor.yy, tensor.zz, tensor.xy, tensor.xz, tensor.yz],
      margin?.nowPct ?? null,
    ];
  });
  return csvOf(MASS_HEAD, rows);
}
