import type { Balance } from '../../balance/balance';
import { shownText } from '../../document/names';
import type { Aircraft } from '../../document/types';
import { formatNumber, ownUnit, shownPlaces, type UnitSystem } from '../../units';
import type { WorkingSheet } from '../../words/workingSheet';

/** Decimals more than on screen that are tried until the column adds up to its total as shown. */
const MOST_EXTRA = 4;

/** What is in each tank at the moment shown. Null where there is no tank. */
export function liquidSheet(
  aircraft: Aircraft,
  { liquids }: Pick<Balance, 'liquids'>,
  units: UnitSystem,
): WorkingSheet | null {
  if (liquids.length === 0) return null;
  const volume = ownUnit('volume', units);
  const held = liquids.map(({ volumeMl }) => volumeMl / volume.size);
  const whole = held.reduce((sum, each) => sum + each, 0);
  const shown = shownPlaces('volume', units);
  const sumAt = (places: number) => held.reduce((sum, each) => sum + Number(each.toFixed(places)), 0);
  let places = shown;
  while (places < shown + MOST_EXTRA && sumAt(places).toFixed(shown) !== whole.toFixed(shown)) places += 1;
  const nameOf = (tankId: string) => aircraft.tanks.find(({ id }) => id === tankId)?.name ?? tankId;
  const total = formatNumber(sumAt(places), places);
  return {
    says: 'What each tank holds at the moment shown.',
    head: ['', `In it, ${volume.symbol}`],
    rows: liquids.map(({ tankId }, index) => [
      shownText(nameOf(tankId)),
      formatNumber(held[index] ?? 0, places),
    ]),
    total: ['Total', total],
    steps: [],
  };
}
