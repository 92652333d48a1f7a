import { stationShiftMm } from '../../engine/balance/ballast';
import type { Vec3 } from '../../engine/geometry/types';
import { stepsUp } from '../../engine/geometry/wholeSteps';
import { type WingTip, wingTip } from '../airframe/wingTip';
import type { Part } from '../document/types';
import { lengthStepsMm, massStepG, massWords, shiftWords, stepped } from './figures';
import type { Goal } from './goal';
import type { Remedy } from './remedy';
import { remedyIf, type Workshop } from './trial';

/** Lead with a little air, g/ml. */
const LEAD_G_PER_ML = 10;
/** So many steps beyond the least are tried. */
const MORE_STEPS = 3;

/** The least mass at the light wing tip that levels the aircraft, where the lengthwise balance stands it. */
export function tipBallast(shop: Workshop, goal: Goal): Remedy | null {
  const right = shop.before.mostLateral ? shop.before.mostLateral.cgMm[1] < 0 : false;
  const tip = wingTip(shop.aircraft, right ? 'right' : 'left');
  if (!tip) return null;
  const [x, y, z] = tip.atMm;
  const step = massStepG(shop.spoken);
  for (const limits of [goal.reserved, goal]) {
    // At a tip beyond the limit each gram brings |y| − limit of moment more than it asks for.
    const limitMm = limits.highMm;
    const neededG = Math.max(
      ...shop.states.flatMap(({ balance }) =>
        balance.travel.map(
          ({ massG, cgMm }) => (massG * ((right ? -cgMm[1] : cgMm[1]) - limitMm)) / (Math.abs(y) - limitMm),
        ),
      ),
    );
    const least = Math.max(1, stepsUp(neededG / step));
    for (let count = least; count < least + MORE_STEPS; count += 1) {
      const massG = stepped(count, step);
      const part = {
        ...LEAD,
        name: `Tip ballast, ${right ? 'right' : 'left'}`,
        shape: leadIn(tip, massG),
        massG,
      };
      const remedy = remedyIf(shop, goal, {
        kind: 'tip-ballast',
        edits: [{ do: 'add', part: { ...part, positionMm: [x, y, z] }, into: 'wing' }],
        words: `Add ${massWords(massG, shop.spoken)} at the ${right ? 'right' : 'left'} wing tip${alongWords(shop, massG, tip.atMm)}`,
      });
      if (remedy) return remedy;
    }
  }
  return null;
}

/** What it does along besides, as of a swept tip: ", which moves the CG 0.6 mm aft"; aft rounded up, forward down. */
function alongWords({ before: { mostLateral }, spoken }: Workshop, addedG: number, atMm: Vec3): string {
  if (!mostLateral) return '';
  const shiftMm = stationShiftMm(mostLateral.massG, mostLateral.cgMm, addedG, atMm);
  const [, step] = lengthStepsMm(spoken);
  const count = stepsUp(shiftMm / step);
  return count === 0 ? '' : `, which moves the CG ${shiftWords(stepped(count, step), 0, true, spoken)}`;
}

const LEAD = { role: 'ballast', yawDeg: 0, pitchDeg: 0, rollDeg: 0 } as const;

/** A flat piece of lead as thick as there is room for. */
function leadIn({ roomMm: { lengthMm, heightMm } }: WingTip, massG: number): Part['shape'] {
  const widthMm = Math.max(0.5, ((massG / LEAD_G_PER_ML) * 1000) / heightMm / lengthMm);
  return { kind: 'box', lengthMm, widthMm, heightMm };
}
