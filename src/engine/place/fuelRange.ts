import type { Band } from '../balance/band';
import { TOUCH_MM } from '../balance/band';
import type { TravelPoint } from '../balance/travel';

/** A stretch of the burn, as fuel fractions, less fuel first. */
export interface FuelStretch {
  readonly fromFraction: number;
  readonly toFraction: number;
}

/**
 * The amounts of fuel that keep the CG in the band, least fuel first. Mass and moment are taken as linear between the
 * points of the travel, so a limit L is crossed where P − L·M is 0: exact where the tanks' moments are linear, and no
 * more than the travel's own sampling away elsewhere.
 */
export function fuelRange(travel: readonly TravelPoint[], band: Band): FuelStretch[] {
  const points = [...travel].sort((a, b) => a.fuelFraction - b.fuelFraction);
  const stretches: { fromFraction: number; toFraction: number }[] = [];
  const add = (fromFraction: number, toFraction: number) => {
    const last = stretches.at(-1);
    if (last && fromFraction <= last.toFraction + 1e-12)
      last.toFraction = Math.max(last.toFraction, toFraction);
    else stretches.push({ fromFraction, toFraction });
  };
  const overAft = ({ massG, cgMm }: TravelPoint) => massG * (cgMm[0] - band.aftMm);
  const underForward = ({ massG, cgMm }: TravelPoint) => massG * (band.forwardMm - cgMm[0]);
  if (points.length === 1 && overAft(points[0]!) <= TOUCH_MM && underForward(points[0]!) <= TOUCH_MM) {
    add(points[0]!.fuelFraction, points[0]!.fuelFraction);
  }
  points.slice(1).forEach((b, i) => {
    const a = points[i]!;
    let [from, to] = [0, 1];
    for (const out of [overAft, underForward]) {
      const [atA, atB] = [out(a), out(b)];
      if (atA > TOUCH_MM && atB > TOUCH_MM) [from, to] = [1, 0];
      else if (atA > TOUCH_MM) from = Math.max(from, atA / (atA - atB));
      else if (atB > TOUCH_MM) to = Math.min(to, atA / (atA - atB));
    }
    if (from > to) return;
    const at = (share: number) => a.fuelFraction + share * (b.fuelFraction - a.fuelFraction);
    add(at(from), at(to));
  });
  return stretches;
}
