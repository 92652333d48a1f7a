import type { Stretch } from '../../engine/geometry/types';
import { listed, midSentence } from '../document/inWords';
import type { ItemZone } from '../place/itemZone';
import { type Aboard, freeAboard, LEAST_MM } from '../place/offeredStation';
import type { Say } from './say';

/** Where an item may sit along the station axis, in a sentence or two. */
export function stationWords(zone: ItemZone, aboard: Aboard, say: Say): string {
  const { allowed } = zone.station;
  if (!allowed) return nowhereWords(zone.station.bestMarginMm, zone.blame, say);
  const { noseMm, tailMm } = aboard;
  if (allowed.toMm < noseMm || allowed.fromMm > tailMm) {
    return `Nowhere aboard: it would have to be ${allowed.toMm < noseMm ? 'ahead of the nose' : 'behind the tail'}.`;
  }
  const free = freeAboard(zone, aboard);
  const clipped = { fromMm: Math.max(allowed.fromMm, noseMm), toMm: Math.min(allowed.toMm, tailMm) };
  const balances = `${capital(rangeWords(clipped, aboard, say))} keeps every load state in the band`;
  if (free.length === 0) return `${balances}, but it has no room there.`;
  const whole =
    free.length === 1 &&
    Math.abs(free[0]!.fromMm - clipped.fromMm) < 1 &&
    Math.abs(free[0]!.toMm - clipped.toMm) < 1;
  if (whole) return `${balances}.`;
  return `${balances}. It has room for itself ${free.map((stretch) => rangeWords(stretch, aboard, say).replace('anywhere ', '')).join(' and ')}.`;
}

/** The same across the wings; empty where that does not hold it. */
export function buttlineWords({ buttline, blame }: ItemZone, say: Say): string {
  if (!buttline) return '';
  const { allowed } = buttline;
  if (!allowed) return `Sideways ${midSentence(nowhereWords(buttline.bestMarginMm, blame, say))}`;
  if (!Number.isFinite(allowed.fromMm) && !Number.isFinite(allowed.toMm)) return '';
  return `Sideways from ${side(allowed.fromMm, say)} to ${side(allowed.toMm, say)}.`;
}

/** What is outside only on the balancing stand, with the item at a place: information, as it does not fly so. Else empty. */
export function standWords(
  zone: ItemZone,
  [stationMm, buttlineMm]: readonly [number, number],
  say: Say,
): string {
  const worst = zone.standAt(stationMm, buttlineMm);
  if (!worst || worst.marginMm >= -LEAST_MM) return '';
  const limit = worst.limit === 'aft' ? 'behind the aft limit' : 'ahead of the forward limit';
  return `On the stand, ${worst.case.name}, the CG is ${say.length(-worst.marginMm)} ${limit}. It does not fly so.`;
}

/** "Nowhere: fails by 4 mm. Full tanks with the undercarriage up are to blame." */
function nowhereWords(bestMarginMm: number, blame: ItemZone['blame'], say: Say): string {
  const names = [...new Set(blame.map(({ name }) => name.replace(/^with /, '')))];
  const fails = `Nowhere: fails by ${say.length(-bestMarginMm)}.`;
  if (names.length === 0) return fails;
  return names.length === 1
    ? `${fails} To blame: ${names[0]}.`
    : `${fails} No place suits both ${listed(names)}.`;
}

function rangeWords({ fromMm, toMm }: Stretch, { noseMm, tailMm }: Aboard, say: Say): string {
  const [ahead, aft] = [fromMm <= noseMm, toMm >= tailMm];
  if (ahead && aft) return 'anywhere aboard';
  if (ahead) return `anywhere ahead of ${say.station(toMm)}`;
  if (aft) return `anywhere aft of ${say.station(fromMm)}`;
  return `anywhere from ${say.station(fromMm)} to ${say.station(toMm)}`;
}

const side = (mm: number, say: Say): string =>
  Math.abs(mm) < LEAST_MM ? 'the middle' : `${say.length(Math.abs(mm))} ${mm < 0 ? 'left' : 'right'}`;

const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);
