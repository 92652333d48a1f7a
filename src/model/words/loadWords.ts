import type { Band } from '../../engine/balance/band';
import { positionOf, switchesOf, UNDERCARRIAGE_ID } from '../airframe/loadSwitches';
import { shownText } from '../document/names';
import type { Aircraft } from '../document/types';
import type { LoadEnvelope, LoadState } from '../loads/loadStates';
import type { Say } from './say';

/** Less than this is not worth a word, mm. */
const WORTH_SAYING_MM = 0.05;

/** A load state in words: "with the undercarriage up, camera off and 8 % fuel". */
export function loadStateName(aircraft: Aircraft, state: LoadState): string {
  const settings = switchesOf(aircraft).flatMap((one, index) => {
    const at = positionOf(one, state.positions);
    if (one.id === UNDERCARRIAGE_ID) return [`the undercarriage ${at.name}`];
    return at === one.positions[0]
      ? []
      : [`${index === 0 ? 'the ' : ''}${lower(shownText(one.name))} ${shownText(at.name)}`];
  });
  const fuel = fuelName(aircraft, state.fuelFraction);
  const all = fuel ? [...settings, fuel] : settings;
  if (all.length === 0) return 'with everything aboard';
  const last = all.at(-1);
  return `with ${all.length === 1 ? last : `${all.slice(0, -1).join(', ')} and ${last}`}`;
}

/** "8 % fuel"; nothing for an aircraft that burns nothing. */
function fuelName({ fuel, tanks }: Aircraft, fraction: number): string {
  if (!fuel || tanks.length === 0) return '';
  const liquid = fuel.use === 'dump' ? 'water' : 'fuel';
  if (fraction > 0.995) return liquid === 'water' ? 'all its water' : 'full tanks';
  if (fraction < 0.005) return liquid === 'water' ? 'no water' : 'dry tanks';
  return `${Math.max(1, Math.round(fraction * 100))} % ${liquid}`;
}

const lower = (name: string) =>
  /^[A-Z][a-z]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name;

/** What all load states together say of the band. */
export interface LoadWords {
  /** What goes beyond a limit in some load state; empty when none does. */
  readonly warning: string;
  /** The ends of the CG's range and the combinations that cause them. */
  readonly ends: string;
}

/** Names the load states that put the CG farthest forward and aft, and says whether they leave the band. */
export function loadWords(
  aircraft: Aircraft,
  { foremost, aftmost }: LoadEnvelope,
  band: Band | null,
  say: Say,
): LoadWords {
  const station = ({ cgMm }: LoadState) => say.station(cgMm[0]);
  const ends =
    aftmost.cgMm[0] - foremost.cgMm[0] < WORTH_SAYING_MM
      ? 'No load state moves the CG.'
      : `Aftmost (${station(aftmost)}) ${loadStateName(aircraft, aftmost)}; foremost (${station(foremost)}) ${loadStateName(aircraft, foremost)}.`;
  if (!band) return { warning: '', ends };
  const over = aftmost.cgMm[0] - band.aftMm;
  const under = band.forwardMm - foremost.cgMm[0];
  const warnings = [
    ...(over > 0 ? [`Tail-heavy by ${say.length(over)} ${loadStateName(aircraft, aftmost)}.`] : []),
    ...(under > 0 ? [`Nose-heavy by ${say.length(under)} ${loadStateName(aircraft, foremost)}.`] : []),
  ];
  return { warning: warnings.join(' '), ends };
}
