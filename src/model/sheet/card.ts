import { faceStation } from '../airframe/align';
import { plumbingOf } from '../balance/liquidTable';
import { liquidWord } from '../document/inWords';
import type { Aircraft } from '../document/types';
import { variantName } from '../document/variants';
import { formatVolume } from '../units';
import { fineStation, type Say } from '../words/say';
import type { Balanced } from './balancing';
import { NO_APPROVAL } from './blocking';
import { shortened } from './dimensions';
import { packsOf } from './packShifts';

/** A card for the field, A6 upright (ISO 216), to be cut out. */
export const CARD = { wideMm: 105, highMm: 148 } as const;

export interface FieldCard {
  readonly title: string;
  readonly banner: string | null;
  readonly rows: readonly {
    readonly id: string;
    readonly label: string;
    readonly value: string;
    readonly note?: string;
  }[];
  readonly heading: string;
  readonly advice: readonly string[];
  readonly foot: string;
}

const LONGEST_FUEL = 40;
/** More packs have no room on the card. */
const MOST_ON_CARD = 6;

interface CardInput {
  readonly aircraft: Aircraft;
  readonly say: Say;
  readonly balanced: Balanced;
  readonly balance: string;
  readonly banner: string | null;
}

/**
 * What to do when it turns out tail-heavy in the air. Common practice, from memory; cautious: nothing here makes a tail-heavy
 * model safe.
 */
const TAIL_HEAVY = [
  'Signs: the nose will not stay where it is put, it pitches up by itself or answers far too sharply.',
  'Keep some speed and height. Small elevator, no tight turns, no flaps, no stall to try it out.',
  'Land at once: long, straight and a little fast, with somebody calling. Do not fly again before weight has gone forward.',
] as const;

export function fieldCard({ aircraft, say, balanced, balance, banner }: CardInput): FieldCard {
  const packs = packsOf(aircraft);
  const left = packs.length - MOST_ON_CARD;
  return {
    title: variantName(aircraft),
    banner,
    rows: [
      { id: 'balance', label: 'Balance', value: balance, note: balanced.words },
      { id: 'mass', label: 'Mass', value: `${say.mass(balanced.balance.massG)} in that state` },
      ...packs.slice(0, MOST_ON_CARD).map(({ id, number, name, item }) => ({
        id: `pack ${id}`,
        // Long names may begin alike; the number is that of the table.
        label: `${number} ${name}`,
        value: `front face at ${fineStation(faceStation(item, 'front'), say)}`,
      })),
      ...(left > 0 ? [{ id: 'more', label: 'More packs', value: `${left}, see the table of parts` }] : []),
      ...fuelRows(aircraft, say),
    ],
    heading: 'If it feels tail-heavy',
    advice: TAIL_HEAVY,
    foot: NO_APPROVAL,
  };
}

function fuelRows(aircraft: Aircraft, { units }: Say): FieldCard['rows'] {
  const { fuel } = aircraft;
  const plumbing = plumbingOf(aircraft);
  if (!fuel || !plumbing) return [];
  const startMl = plumbing.tanks.reduce((sum, tank) => sum + tank.startMl, 0);
  const reserve = fuel.reservePct > 0 ? `, land with ${fuel.reservePct}\u00a0% left` : '';
  const label = liquidWord(aircraft) === 'water' ? 'Water' : 'Fuel';
  return [
    {
      id: 'fuel',
      label,
      value: `${formatVolume(startMl, units)} of ${shortened(fuel.name, LONGEST_FUEL)}${reserve}`,
    },
  ];
}
