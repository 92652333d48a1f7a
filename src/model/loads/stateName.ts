import { positionOf, switchesOf, UNDERCARRIAGE_ID } from '../airframe/loadSwitches';
import { liquidWord, listed, midSentence } from '../document/inWords';
import { shownText } from '../document/names';
import type { Aircraft } from '../document/types';
import type { LoadState } from './loadStates';

/** A load state in words: "with the undercarriage up, camera off and 8 % fuel". */
export function loadStateName(aircraft: Aircraft, state: LoadState): string {
  const settings = switchesOf(aircraft).flatMap((loadSwitch, index) => {
    const at = positionOf(loadSwitch, state.positions);
    if (loadSwitch.id === UNDERCARRIAGE_ID) return [`the undercarriage ${at.name}`];
    return at === loadSwitch.positions[0]
      ? []
      : [`${index === 0 ? 'the ' : ''}${midSentence(shownText(loadSwitch.name))} ${shownText(at.name)}`];
  });
  const fuel = fuelName(aircraft, state.fuelFraction);
  const all = fuel ? [...settings, fuel] : settings;
  if (all.length === 0) return 'with everything aboard';
  return `with ${listed(all)}`;
}

/** "8 % fuel"; nothing for an aircraft that burns nothing. */
function fuelName(aircraft: Aircraft, fraction: number): string {
  if (!aircraft.fuel || aircraft.tanks.length === 0) return '';
  const liquid = liquidWord(aircraft);
  if (fraction > 0.995) return liquid === 'water' ? 'all its water' : 'full tanks';
  if (fraction < 0.005) return liquid === 'water' ? 'no water' : 'dry tanks';
  return `${Math.max(1, Math.round(fraction * 100))} % ${liquid}`;
}
