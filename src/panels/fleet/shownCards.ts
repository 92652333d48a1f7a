import type { FleetCard } from '../../store/fleetStore';

export const orders = [
  { id: 'changed', label: 'Last changed first' },
  { id: 'name', label: 'By name' },
  { id: 'mass', label: 'Lightest first' },
] as const;

export type FleetOrder = (typeof orders)[number]['id'];

/** How a text is compared with what a person types: without capitals and accents. */
const plain = (text: string) => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();

const compares: Readonly<Record<FleetOrder, (a: FleetCard, b: FleetCard) => number>> = {
  changed: (a, b) => b.changedAtMs - a.changedAtMs,
  name: (a, b) => a.name.localeCompare(b.name, 'en', { numeric: true, sensitivity: 'base' }),
  mass: (a, b) => (a.massG ?? Number.POSITIVE_INFINITY) - (b.massG ?? Number.POSITIVE_INFINITY),
};

/** Those that are not deleted and have every typed word in their name, in an order. */
export function shownCards(
  cards: readonly FleetCard[],
  wanted: string,
  order: FleetOrder,
): readonly FleetCard[] {
  const words = plain(wanted).split(/\s+/).filter(Boolean);
  return cards
    .filter(
      ({ name, deletedAtMs }) => deletedAtMs === null && words.every((word) => plain(name).includes(word)),
    )
    .sort((a, b) => compares[order](a, b) || compares.changed(a, b));
}
