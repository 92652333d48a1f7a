import type { Aircraft } from '../document/types';
import { statedMoment } from '../judgement/statedPoint';
import { momentWords } from './momentWords';

/**
 * Where what is offered differs from what is judged: limits that were stated for one load state are judged in that one,
 * while a place that is offered keeps them in every one. Empty where the limits hold for every load state.
 */
export function statedForWords(aircraft: Aircraft): string {
  const moment = statedMoment(aircraft);
  if (!moment) return '';
  const words = momentWords(aircraft, moment) || 'the load state it starts in';
  return `The verdict holds only ${words} to the limits; what is offered here keeps every load state in them.`;
}
