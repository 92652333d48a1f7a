import { positionOf, switchesOf, UNDERCARRIAGE_ID } from '../airframe/loadSwitches';
import { liquidWord, midSentence } from '../document/inWords';
import type { Aircraft } from '../document/types';
import type { Moment } from '../judgement/types';

/** How much is left in as few words as there are: "tanks full", "dry", "41 % fuel"; nothing where nothing burns. */
function fuelWords(aircraft: Aircraft, fraction: number): string {
  const { fuel, tanks } = aircraft;
  if (!fuel || tanks.length === 0) return '';
  if (fraction >= 0.995) return 'tanks full';
  if (fraction < 0.005) return 'tanks dry';
  return `${Math.max(1, Math.round(fraction * 100))} % ${liquidWord(aircraft)}`;
}

/** A load state in as few words as there are: "tanks dry, wheels up, camera off". */
export function momentWords(aircraft: Aircraft, { positions, fuelFraction }: Moment): string {
  const settings = switchesOf(aircraft).flatMap((loadSwitch) => {
    const at = positionOf(loadSwitch, positions);
    if (loadSwitch.id === UNDERCARRIAGE_ID) return [`wheels ${at.name}`];
    return at === loadSwitch.positions[0] ? [] : [`${midSentence(loadSwitch.name)} ${at.name}`];
  });
  return [fuelWords(aircraft, fuelFraction), ...settings].filter(Boolean).join(', ');
}
