import { sayIn } from '../../src/commands/say';
import type { Vec3 } from '../../src/engine/geometry/types';
import { balanceAt, LEVEL } from '../../src/model/balance/balance';
import { certaintyOf, cgErrorOf } from '../../src/model/balance/certainty';
import type { Aircraft } from '../../src/model/document/types';
import { judge } from '../../src/model/judgement/judge';
import { judgeFully } from '../../src/model/judgement/judgeFully';
import { loadEnvelopeOf } from '../../src/model/loads/loadStates';
import { itemZone } from '../../src/model/place/itemZone';
import { manifestRows } from '../../src/model/words/manifestRows';
import { sensitivityRows } from '../../src/model/words/sensitivityRows';
import { verdict } from '../../src/model/words/verdict';
import { workingOf } from '../../src/model/words/working';
import { weightsAlong } from '../../src/panels/beam/weights';
import type { Chance } from './chance';

const say = sayIn('metric', null);

const downs: readonly Vec3[] = [LEVEL, [Math.SQRT1_2, 0, -Math.SQRT1_2], [0.6, 0, -0.8]];

/** Every figure and sentence that the bench makes of an aircraft, by name. `deep`: the slow ones too. */
export function derivedOf(
  aircraft: Aircraft,
  chance: Chance,
  deep: boolean,
): Readonly<Record<string, unknown>> {
  const down = deep ? chance.pick(downs) : LEVEL;
  const balances = [1, chance.next(), 0].map((fuelFraction) => balanceAt(aircraft, { fuelFraction, down }));
  const [full, part, dry] = balances as [(typeof balances)[0], (typeof balances)[0], (typeof balances)[0]];
  const given = { down, estimate: null };
  const judgement = deep
    ? judgeFully(aircraft, given)
    : judge(aircraft, { ...given, loads: { status: 'unfinished' }, fit: null, certainty: null });
  const item = [...aircraft.parts, ...aircraft.tanks][0];
  return {
    balances: [full, part, dry].map(({ loaded: _, liquid: __, ...figures }) => figures),
    verdict: verdict(aircraft, judgement, say),
    manifest: manifestRows(aircraft),
    beam: [weightsAlong(part, 0), weightsAlong(part, 1)],
    working: workingOf(aircraft, part, 0),
    error: cgErrorOf(aircraft, part),
    certainty: certaintyOf(aircraft, full),
    ...(deep && {
      sensitivity: sensitivityRows(full),
      zone: item && itemZone(aircraft, item.id, down),
      loads: loadEnvelopeOf(aircraft, down),
    }),
  };
}

/** Where a figure is NaN, or a sentence speaks of one; null when all is well. */
export function firstNaN(value: unknown, path = ''): string | null {
  if (typeof value === 'number') return Number.isNaN(value) ? path : null;
  if (typeof value === 'string') return /NaN|undefined|Infinity/.test(value) ? `${path}: ${value}` : null;
  if (typeof value !== 'object' || value === null) return null;
  for (const [key, member] of Object.entries(value)) {
    const found = firstNaN(member, `${path}.${key}`);
    if (found !== null) return found;
  }
  return null;
}
