import type { Balance } from '../../model/balance/balance';
import type { Aircraft } from '../../model/document/types';
import type { BandStations } from '../../model/stability/band';
import type { Axis, AxisState } from '../../store/axisStore';
import type { Bench } from '../../store/bench';

/** What the strip is laid along: stations under side, top and free view, buttlines under the front view. */
export interface Line {
  readonly axis: 0 | 1;
  pick(state: AxisState): Axis;
  /** Where the CG should be along this line, mm; null when nobody said. */
  zone(aircraft: Aircraft, balance: Balance): BandStations | null;
  /** Where the beam rests, mm. */
  pivot(balance: Balance): number | null;
}

export const stationLine: Line = {
  axis: 0,
  pick: (state) => state.station,
  zone: (_aircraft, balance) => balance.band,
  pivot: (balance) => balance.cgMm?.[0] ?? null,
};

export const lateralLine: Line = {
  axis: 1,
  pick: (state) => state.lateral,
  zone: ({ lateralToleranceMm }) => ({ forwardMm: -lateralToleranceMm, aftMm: lateralToleranceMm }),
  pivot: () => 0,
};

/** A line through points "x y" as a path; nothing where there are none. */
export const pathThrough = (points: readonly string[]): string =>
  points.length > 0 ? `M${points.join('L')}` : '';

export const burns = ({ balance }: Bench): boolean => balance.get().travel.length > 1;
