import type { Vec3 } from '../engine/geometry/types';
import type { Balance } from '../model/balance/balance';
import { liquidWord } from '../model/document/inWords';
import type { Aircraft } from '../model/document/types';
import { manifestRows } from '../model/words/manifestRows';

/** One line of the sum. The lines' masses add up to the whole. */
export interface BalanceRow {
  readonly id: string;
  readonly name: string;
  readonly group: 'structure' | 'tank' | 'part' | 'lead' | 'liquid';
  readonly role: string;
  readonly massG: number;
  readonly cgMm: Vec3 | null;
}

/** All that is in the sum at this loading: structure, tanks, parts, then the liquid in each tank. */
export function balanceRows(aircraft: Aircraft, balance: Balance): readonly BalanceRow[] {
  const items = manifestRows(aircraft)
    .filter(({ counted }) => counted)
    .map(({ id, name, group, role, massG, cgMm }) => ({ id, name, group, role, massG, cgMm }));
  const liquid = liquidWord(aircraft);
  const liquids = balance.liquids.map(({ tankId, mass }): BalanceRow => {
    const tank = aircraft.tanks.find(({ id }) => id === tankId);
    const { massG, cgMm } = mass;
    const name = `${tank?.name ?? tankId}, ${liquid}`;
    return { id: `${tankId}.liquid`, name, group: 'liquid', role: 'fuel', massG, cgMm };
  });
  return [...items, ...liquids];
}
