import { expect, test } from 'vitest';
import { shownCards } from '../../../src/panels/fleet/shownCards';
import { whenWords } from '../../../src/panels/when';
import type { FleetCard } from '../../../src/store/fleetStore';

const card = (
  name: string,
  massG: number | null,
  changedAtMs: number,
  deletedAtMs: number | null = null,
): FleetCard => ({
  id: name,
  name,
  massG,
  changedAtMs,
  deletedAtMs,
  tone: null,
  picture: [],
  digest: '',
});
const cards = [
  card('Knot 10', 900, 1),
  card('Knot 2', null, 3),
  card('Ruff à skis', 400, 2),
  card('Gone', 1, 9, 5),
];
const names = (wanted: string, order: Parameters<typeof shownCards>[2]) =>
  shownCards(cards, wanted, order).map(({ name }) => name);

test('the fleet in its orders, and what a search finds', () => {
  expect(names('', 'changed')).toEqual(['Knot 2', 'Ruff à skis', 'Knot 10']);
  expect(names('', 'name')).toEqual(['Knot 2', 'Knot 10', 'Ruff à skis']);
  // Without a mass it is last.
  expect(names('', 'mass')).toEqual(['Ruff à skis', 'Knot 10', 'Knot 2']);
  expect(names(' SKIS a ', 'changed')).toEqual(['Ruff à skis']);
  expect(names('gone', 'changed')).toEqual([]);
});

test('when something was is said as in a list', () => {
  const at = (day: number, hour: number, minute = 5) => new Date(2026, 2, day, hour, minute).getTime();
  expect(whenWords(at(3, 14), at(3, 14) + 59_000)).toBe('just now');
  expect(whenWords(at(3, 9), at(3, 14))).toBe('today 09:05');
  expect(whenWords(at(2, 23), at(3, 0))).toBe('yesterday 23:05');
  expect(whenWords(at(1, 9), at(3, 14))).toBe('1 March 2026');
  // A clock that was set back.
  expect(whenWords(at(3, 15), at(3, 14))).toBe('today 15:05');
});
