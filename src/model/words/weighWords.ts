import type { Figure } from '../../engine/weigh/figure';
import type { Culprit } from '../../engine/weigh/rankCulprits';
import type { Difference } from '../../engine/weigh/reconcile';
import type { UnaccountedFor } from '../../engine/weigh/unaccountedFor';
import { shelf } from '../airframe/shelf';
import { itemById } from '../document/edit';
import { listed } from '../document/inWords';
import type { Aircraft } from '../document/types';
import { formatLength, formatMass, formatMoment, formatNumber, LEAST_SHOWN_MM, toOwnUnit } from '../units';
import type { Correction } from '../weigh/correction';
import type { HeldAgainst } from '../weigh/heldAgainst';
import type { Thought } from '../weigh/thought';
import { fineStation, lengthUp, type Say } from './say';

const MONTHS = 'January February March April May June July August September October November December'.split(
  ' ',
);

/** "12 May" of "2026-05-12", with the year when asked for it. */
export function dayWords(date: string, withYear = false): string {
  const [year, month, day] = date.split('-');
  const words = `${Number(day)} ${MONTHS[Number(month) - 1] ?? '?'}`;
  return withYear ? `${words} ${year}` : words;
}

/** Two standard uncertainties, rounded up: a ± is never said to be less than it is. */
const plusMinusLength = ({ sigma }: Figure, say: Say) => `± ${lengthUp(2 * sigma, say)}`;
function plusMinusMass({ sigma }: Figure, { units }: Say) {
  const step = units === 'metric' ? 1 : 0.01 / toOwnUnit(1, 'mass', units);
  return `± ${formatMass(Math.ceil((2 * sigma) / step - 1e-6) * step, units)}`;
}

/** "742.3 mm ± 0.8 mm", from the reference point of the readings. */
export const stationFigure = (figure: Figure, say: Say): string =>
  `${fineStation(figure.value, say)} ${plusMinusLength(figure, say)}`;
export const massFigure = (figure: Figure, say: Say): string =>
  `${say.mass(figure.value)} ${plusMinusMass(figure, say)}`;
/** "4.1 mm right ± 0.5 mm". */
export function buttlineFigure(figure: Figure, say: Say): string {
  const off = formatLength(Math.abs(figure.value), say.units, { fine: true });
  const where = /[1-9]/.test(off) ? `${off} ${figure.value < 0 ? 'left' : 'right'}` : 'level';
  return `${where} ${plusMinusLength(figure, say)}`;
}

/** "20.4 mm ± 3.1 mm", waterline. */
const waterlineFigure = (figure: Figure, say: Say): string =>
  `${formatLength(figure.value, say.units, { fine: true })} ${plusMinusLength(figure, say)}`;

export const quantityFigure = ({ quantity }: Difference, figure: Figure, say: Say): string => {
  if (quantity === 'mass') return massFigure(figure, say);
  if (quantity === 'waterline') return waterlineFigure(figure, say);
  return quantity === 'buttline' ? buttlineFigure(figure, say) : stationFigure(figure, say);
};

export const quantityName = ({ quantity }: Difference): string =>
  ({ mass: 'Mass', station: 'CG along', buttline: 'CG across', waterline: 'CG height' })[quantity];

/** What is worth a word: more than one sigma, the largest against its own error first. */
function offWords({ quantity, difference: { value } }: Difference, say: Say): string {
  const by = lengthUp(Math.abs(value), say);
  if (quantity === 'mass') return `${say.mass(Math.abs(value))} ${value > 0 ? 'heavier' : 'lighter'}`;
  if (quantity === 'station') return `${by} farther ${value > 0 ? 'aft' : 'forward'}`;
  if (quantity === 'waterline') return `${by} ${value > 0 ? 'higher' : 'lower'}`;
  return `${by} farther ${value > 0 ? 'right' : 'left'}`;
}

const share = ({ difference: { value, sigma } }: Difference) => Math.abs(value) / sigma;

/** "1 in 400", never said to be likelier than it is. */
const chanceWords = (chance: number) =>
  chance < 1e-4 ? 'less than 1 time in 10 000' : `1 time in ${formatNumber(Math.ceil(1 / chance - 1e-6), 0)}`;

const measuredBy: Readonly<Record<HeldAgainst['by'], string>> = {
  scales: 'Scales',
  stand: 'Stand',
  lines: 'Lines',
  tilt: 'Tilt',
  swing: 'Swing',
};
const ways = { station: 'along', buttline: 'across', waterline: 'in height' } as const;

/** One sentence: whether it agrees, by how much, and how sure that is. */
export function agreementWords({ reconciled, by }: HeldAgainst, say: Say): string {
  const { agrees, confidence, differences, chance } = reconciled;
  const at = `${Math.round(confidence * 100)} %`;
  const both = `${measuredBy[by]} and list`;
  if (agrees) {
    const within = differences.flatMap(({ quantity, difference: { value } }) =>
      quantity === 'mass' ? [] : [`${lengthUp(Math.abs(value), say)} ${ways[quantity]}`],
    );
    return `${both} agree within ${listed(within)}, at ${at} confidence.`;
  }
  const worst = [...differences].sort((a, b) => share(b) - share(a));
  // Errors that go together can disagree without any one figure being far out by itself: then the worst is named.
  const off = worst
    .filter((difference, at) => at === 0 || share(difference) > 1)
    .map((difference) => offWords(difference, say));
  return `${both} do not agree at ${at} confidence: measured, it is ${off.join(', ')}. Chance alone would do that ${chanceWords(chance)}.`;
}

/** Short, for the row of facts: "agrees within 0.6 mm", "off by 4.2 mm". */
export function agreementFact({ reconciled, stationOffMm }: HeldAgainst, say: Say): string {
  if (reconciled.agrees) return `agrees within ${lengthUp(Math.abs(stationOffMm), say)}`;
  const [worst] = [...reconciled.differences].sort((a, b) => share(b) - share(a));
  return worst ? `${offWords(worst, say)} than listed` : 'does not agree';
}

/** The sum of the list against the whole as weighed: "The list sums to 6845 g ± 35 g; weighed on 12 May the whole was 6847 g ± 2 g". */
export function sumWords(listed: Figure, weighed: Figure, day: string, say: Say): string {
  const off = weighed.value - listed.value;
  const more = `${say.mass(Math.abs(off))} ${off < 0 ? 'less' : 'more'}`;
  return `With structure and fuel as on ${day} the list sums to ${massFigure(listed, say)}; the whole weighed ${massFigure(weighed, say)} then, ${more}.`;
}

const shelfName = (id: string) => shelf[Number(id)]?.name ?? 'an item of the shelf';
const axisNames = ['station', 'buttline', 'waterline'] as const;

const coordinate = (mm: number, axis: number, say: Say) =>
  axis === 0 ? fineStation(mm, say) : formatLength(mm, say.units, { fine: true });

/** What would have gone wrong: "Camera is mirrored: buttline −20 mm, not 20 mm". */
export function culpritWords(culprit: Culprit, { names, suspects }: Thought, say: Say): string {
  const { kind, id, axis, factor, massG, positionMm } = culprit;
  const name = names.get(id) ?? id;
  const before = suspects.find((suspect) => suspect.id === id)?.mass;
  const wasG = say.mass(before?.massG ?? 0);
  const isG = say.mass(massG);
  const places = () =>
    axis === null
      ? 'the whole place'
      : `${axisNames[axis]} ${coordinate(positionMm[axis], axis, say)}, not ${coordinate(before?.cgMm?.[axis] ?? 0, axis, say)}`;
  switch (kind) {
    case 'not-weighed':
      return `${name} weighs ${isG}, not ${wasG}`;
    case 'mirrored':
      return `${name} is on the other side: ${places()}`;
    case 'mass-times-ten':
      return `${name}: a slip of ten, ${isG}, not ${wasG}`;
    case 'mass-unit':
      return `${name}: ${(factor ?? 1) > 1 ? 'ounces' : 'grams'} taken for ${(factor ?? 1) > 1 ? 'grams' : 'ounces'}, ${isG}, not ${wasG}`;
    case 'place-times-ten':
      return `${name}: a slip of ten, ${places()}`;
    case 'place-unit':
      return `${name}: ${(factor ?? 1) > 1 ? 'inches taken for mm' : 'mm taken for inches'}, ${places()}`;
    case 'sign':
      return `${name}: the wrong sign, ${places()}`;
    case 'not-aboard':
      return `${name} was not aboard`;
    case 'forgotten':
      return `Something like ${shelfName(id)} is not in the list, near station ${say.station(positionMm[0])}`;
  }
}

/** What the button does: "Put Camera at buttline −20 mm". */
export function correctionWords(aircraft: Aircraft, correction: Correction, say: Say): string {
  switch (correction.kind) {
    case 'mass':
      return `Set ${itemById(aircraft, correction.id)?.name ?? ''} to ${formatMass(correction.massG, say.units, { fine: true })}`;
    case 'place': {
      const item = itemById(aircraft, correction.id);
      const moved = correction.positionMm.flatMap((mm, axis) =>
        Math.abs(mm - (item?.positionMm[axis] ?? 0)) < LEAST_SHOWN_MM
          ? []
          : [`${axisNames[axis]} ${coordinate(mm, axis, say)}`],
      );
      return `Put ${item?.name ?? ''} at ${moved.join(', ')}`;
    }
    case 'remove':
      return `Take ${itemById(aircraft, correction.id)?.name ?? ''} off the list`;
    case 'add': {
      const { name, massG, positionMm } = correction.part;
      return `Add “${name}”, ${say.mass(massG)} at station ${say.station(positionMm[0])}`;
    }
  }
}

/** "Something unaccounted for: 45 g ± 12 g at station 302 ± 80 mm." */
export function unaccountedWords({ massG, placeMm, momentGmm }: UnaccountedFor, say: Say): string {
  const [station, buttline, waterline] = placeMm;
  if (!station) {
    const way = momentGmm[0] > 0 ? 'aft' : 'forward';
    const side = momentGmm[1] > 0 ? 'right' : 'left';
    const sideways =
      momentGmm[1] === 0 ? '' : ` and ${formatMoment(Math.abs(momentGmm[1]), say.units)} more to the ${side}`;
    return `Next to no mass is unaccounted for (${massFigure(massG, say)}), so it is a place that is off: by the measurement there is ${formatMoment(Math.abs(momentGmm[0]), say.units)} more ${way}${sideways}.`;
  }
  const across = buttline ? `, ${buttlineFigure(buttline, say)}` : '';
  const high = waterline ? `, waterline ${waterlineFigure(waterline, say)}` : '';
  const what = massG.value > 0 ? 'Something unaccounted for' : 'Something too much in the list';
  return `${what}: ${massFigure({ ...massG, value: Math.abs(massG.value) }, say)} at station ${stationFigure(station, say)}${across}${high}.`;
}
