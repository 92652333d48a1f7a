import { stepsDown, stepsUp } from '../../engine/geometry/wholeSteps';
import { axisOf, type Elevation, fitElevation, uprightMmPerPx } from '../../interaction/elevation';
import type { Extent } from '../../interaction/snap';
import { type AxisState, pxToAxis } from '../../store/axisStore';
import type { View } from '../../store/viewStore';
import type { RuleRun } from './graduation';

/** What the rule goes by. */
interface RuleSetting {
  readonly view: View;
  readonly extent: Extent;
  /** Where it reads 0, mm. */
  readonly zeroMm: number;
  readonly picture: Pick<AxisState, 'widthPx' | 'heightPx'>;
  readonly fit: Parameters<typeof fitElevation>[3];
}

/** A rule ends on a whole step of so many mm. */
const STEP_MM = 100;

/** Along the mat in the free view: from the zero, and ahead of it where that is not the nose, to the tail. */
function onTheMat({ extent, zeroMm }: RuleSetting): RuleRun {
  const lengthMm = extent.maxMm[0] - extent.minMm[0];
  return {
    fromMm: Math.min(zeroMm, zeroMm + Math.floor((extent.minMm[0] - zeroMm) / STEP_MM + 0.2) * STEP_MM),
    toMm: Math.ceil(extent.maxMm[0] / STEP_MM) * STEP_MM,
    zeroMm,
    atMm: 0,
    mirrored: false,
    every: lengthMm > 1300 ? 2 : 1,
    figureMm: Math.min(90, Math.max(36, lengthMm * 0.04)),
  };
}

/** A figure's cell in an elevation, px: read at arm's length on a desk, and small enough for a phone. */
const cellPx = (widthPx: number): number => (widthPx < 520 ? 17 : 21);
/** From the lower edge to over the stage's bar, and from the left one to beside it, px. */
const BAR_PX = { high: 64.5, wide: 84 };
/** A figure stands between its neighbours with so many cells from one to the next. */
const APART_CELLS = 2.6;

/** Which steps of 100 mm carry a figure, so that none touches the next. */
const figuresEvery = (figureMm: number): number =>
  [1, 2, 5, 10, 20].find((every) => every * STEP_MM >= APART_CELLS * figureMm) ?? 50;

/** Under the aircraft as it is fitted into the picture: no longer than that, and clear of the stage's bar. */
function inElevation(setting: RuleSetting, view: Elevation): RuleRun {
  const { extent, zeroMm, picture, fit } = setting;
  const axes: AxisState = { ...picture, ...fitElevation(extent, view, picture, fit) };
  const axis = axisOf(axes, view);
  const upMmPerPx = uprightMmPerPx(axes, view);
  const cell = cellPx(picture.widthPx);
  const figureMm = cell * Math.abs(axis.mmPerPx);
  const lowestMm = axes.middleMm[view] - (picture.heightPx / 2) * upMmPerPx;
  const underMm = view === 'top' ? extent.minMm[1] - 0.3 * cell * upMmPerPx : extent.minMm[2];
  // Where the wing leaves the picture below, the rule lies over it, above the bar.
  const atMm = Math.max(underMm, lowestMm + (view === 'top' ? 1.7 * cell + 8 : 0) * upMmPerPx);
  const figuresEndPx = (atMm - lowestMm) / upMmPerPx - 1.52 * cell;
  const besidePx = figuresEndPx < BAR_PX.high ? BAR_PX.wide + cell : cell;
  const [leftMm, rightMm] = [besidePx, picture.widthPx - cell].map((px) => pxToAxis(axis, px)) as [
    number,
    number,
  ];
  const [lowMm, highMm] = [Math.min(leftMm, rightMm), Math.max(leftMm, rightMm)];
  const up = (mm: number) => zeroMm + stepsUp((mm - zeroMm) / STEP_MM) * STEP_MM;
  const down = (mm: number) => zeroMm + stepsDown((mm - zeroMm) / STEP_MM) * STEP_MM;
  const [firstMm, lastMm] =
    view === 'front'
      ? [-down(extent.maxMm[1]), down(extent.maxMm[1])]
      : [Math.min(zeroMm, down(extent.minMm[0] + 0.2 * STEP_MM)), up(extent.maxMm[0])];
  return {
    fromMm: Math.max(firstMm, up(lowMm)),
    toMm: Math.min(lastMm, down(highMm)),
    zeroMm,
    atMm,
    mirrored: view === 'front',
    every: figuresEvery(figureMm),
    figureMm,
  };
}

/** Where the rule is printed, and how large. */
export const ruleRun = (setting: RuleSetting): RuleRun =>
  setting.view === 'free' ? onTheMat(setting) : inElevation(setting, setting.view);
