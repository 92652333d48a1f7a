import { ATTITUDES, type BenchAttitude, LEVEL_ATTITUDE } from '../model/loads/attitude';
import { shortened } from '../model/reading/fault';

/** As far as an attitude may be typed: whole turns, and more than any launch gives. */
const MOST = { pitchDeg: 90, rollDeg: 180, forwardG: 20 } as const;

/**
 * An attitude as it is typed: one of the list by its id or name, or nose up in degrees, right wing down in degrees and g
 * forward, separated by commas; what is left out is 0. A sentence when it cannot be read.
 */
export function attitudeWish(typed: string): BenchAttitude | { readonly fault: string } {
  const plain = typed.trim().toLowerCase();
  const named = ATTITUDES.find(({ id, name }) => id === plain || name.toLowerCase() === plain);
  if (named) {
    const { pitchDeg, rollDeg, forwardG } = named;
    return { pitchDeg, rollDeg, forwardG };
  }
  const figures = plain.split(',').map((text) => (text.trim() === '' ? Number.NaN : Number(text)));
  const keys = ['pitchDeg', 'rollDeg', 'forwardG'] as const;
  const read = { ...LEVEL_ATTITUDE };
  const good =
    figures.length <= keys.length &&
    figures.every((value, k) => {
      read[keys[k]!] = value;
      return Math.abs(value) <= MOST[keys[k]!];
    });
  if (good && !fallsFreely(read)) return read;
  const names = ATTITUDES.map(({ id }) => id).join(', ');
  return {
    fault: `--attitude: expected one of ${names}, or nose up, right wing down and g forward such as 12,0,0.5, got "${shortened(typed)}".`,
  };
}

/** Gravity and acceleration cancel, so nothing is down: nose straight down at one g forward, or up at one backward. */
const fallsFreely = ({ pitchDeg, forwardG }: BenchAttitude): boolean =>
  pitchDeg === -forwardG * 90 && Math.abs(forwardG) === 1;
