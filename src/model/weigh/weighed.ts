import { type Figure, type Refusal, refusal } from '../../engine/weigh/figure';
import type { Aircraft, WeighIn } from '../document/types';
import { byLines } from './byLines';
import { byScales } from './byScales';
import { byStand } from './byStand';
import { byTilt } from './byTilt';
import type { Weighed } from './measured';
import type { Thought } from './thought';

/** @param cgWaterlineMm how high the CG is thought to be: it has a say when the aircraft did not stand level on its scales */
export function weighedOf(
  aircraft: Aircraft,
  entry: WeighIn,
  thought: Thought,
  cgWaterlineMm: Figure,
): Weighed | Refusal {
  const { id, reading } = entry;
  switch (reading.by) {
    case 'scales':
      return byScales(id, reading, cgWaterlineMm);
    case 'stand':
      return byStand(id, reading);
    case 'lines':
      return byLines(id, reading);
    case 'tilt':
      return byTilt(aircraft, entry, reading, thought);
    case 'swing':
      return refusal('A swing says nothing about where the CG is.');
  }
}
