import { perObject } from '../../engine/memory/memory';
import { cellFigures, pairOhm } from '../../engine/power/cells';
import type { PackSource, PowerNet, PowerUnit } from '../../engine/power/types';
import { leadState } from '../airframe/leads';
import type { Aircraft, Part, PowerPack, PowerSupply } from '../document/types';

/** A feed as the document has it, with what it joins. */
export interface WiredFeed {
  readonly from: Part;
  readonly to: Part;
  readonly supply: PowerSupply;
  /** The lead of the document that carries it; null where there is none. */
  readonly leadId: string | null;
}

/** All that is wired, and the net that it makes. */
export interface Wiring {
  readonly packs: readonly Part[];
  /** Everything else in the wiring. */
  readonly units: readonly Part[];
  /** In the order of the net's feeds. */
  readonly feeds: readonly WiredFeed[];
  readonly net: PowerNet;
}

/** The most that a regulator needs above its output where nothing is said, V (common practice, no source). */
const USUAL_DROPOUT_V = { switching: 0.5, linear: 1 } as const;
/** Of what a switching regulator takes it usually gives so much, % (common practice, no source). */
const USUAL_EFFICIENCY_PCT = 85;

/** The wiring of everything aboard; null where nothing is wired yet. Every part counts, whatever the switches say. */
export const wiringOf = perObject((aircraft: Aircraft): Wiring | null => {
  const wired = aircraft.parts.filter(({ power }) => power !== undefined);
  if (wired.length === 0) return null;
  const byId = new Map(wired.map((part) => [part.id, part]));
  const packs = wired.filter(({ power }) => power?.pack);
  const units = wired.filter(({ power }) => !power?.pack);
  const feeds = units.flatMap((to) =>
    (to.power?.fedBy ?? []).flatMap((supply): readonly WiredFeed[] => {
      const from = byId.get(supply.from);
      return from ? [{ from, to, supply, leadId: leadBetween(aircraft, from.id, to.id) }] : [];
    }),
  );
  return {
    packs,
    units,
    feeds,
    net: {
      packs: packs.flatMap(({ id, power }) => (power?.pack ? [packSource(id, power.pack)] : [])),
      units: units.map(unitOf),
      feeds: feeds.map(({ from, to, supply, leadId }) => ({
        from: from.id,
        to: to.id,
        ohm: supply.wireMm2 === undefined ? 0 : pairOhm(lengthMm(aircraft, leadId, from, to), supply.wireMm2),
        pastRegulator: supply.pastRegulator ?? false,
      })),
    },
  };
});

/** A pack by its cells: volts, resistance and what is to be used of it; what is not said is what is common for its kind. */
export function packSource(
  id: string,
  { chemistry, cells, capacityMah, usablePct, milliohm }: PowerPack,
): PackSource {
  const cell = cellFigures[chemistry];
  return {
    id,
    fullV: cells * cell.fullV,
    nominalV: cells * cell.nominalV,
    emptyV: cells * cell.emptyV,
    ohm: milliohm === undefined ? (cells * cell.ohmMah) / capacityMah : milliohm / 1000,
    capacityMah,
    usableShare: usablePct === undefined ? cell.usableShare : usablePct / 100,
  };
}

function unitOf({ id, power }: Part): PowerUnit {
  const regulator = power?.regulator;
  if (!regulator) return { id, regulator: null };
  const { way, outputV, dropoutV = USUAL_DROPOUT_V[way], efficiencyPct = USUAL_EFFICIENCY_PCT } = regulator;
  return {
    id,
    regulator: { outputV, dropoutV, efficiency: way === 'linear' ? null : efficiencyPct / 100 },
  };
}

function leadBetween({ leads = [] }: Aircraft, a: string, b: string): string | null {
  return leads.find(({ from, to }) => (from === a && to === b) || (from === b && to === a))?.id ?? null;
}

/** Of the lead where there is one, else straight from one to the other, mm. */
function lengthMm(aircraft: Aircraft, leadId: string | null, from: Part, to: Part): number {
  const lead = aircraft.leads?.find(({ id }) => id === leadId);
  const state = lead && leadState(aircraft, lead);
  if (state) return state.ownedMm ?? state.neededMm;
  return Math.hypot(...from.positionMm.map((mm, axis) => mm - (to.positionMm[axis] ?? 0)));
}
