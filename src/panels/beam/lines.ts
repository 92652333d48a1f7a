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

/** The heights of the strip's rows, px from its top. */
export const rows = {
  labels: 16,
  /** Where the name of what is selected stands. */
  tag: 34,
  weightsTop: 40,
  beam: 122,
  ruler: 168,
  numerals: 185,
  /** The second scale, in % MAC. */
  mac: 193,
  macNumerals: 213,
  travelTop: 232,
  travelBottom: 298,
  bottom: 310,
  bottomWithoutTravel: 222,
} as const;

/** A line through points "x y" as a path; nothing where there are none. */
export const pathThrough = (points: readonly string[]): string =>
  points.length > 0 ? `M${points.join('L')}` : '';

export const burns = ({ balance }: Bench): boolean => balance.get().travel.length > 1;
