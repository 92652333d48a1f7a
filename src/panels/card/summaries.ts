import { shapeBounds } from '../../engine/mass/shapeBounds';
import { cgErrorOf, LINE_95 } from '../../model/balance/certainty';
import { massOnScales } from '../../model/balance/massOnScales';
import { itemById } from '../../model/document/edit';
import { formatNumber, formatVolume, type UnitSystem } from '../../model/units';
import type { Bench } from '../../store/bench';
import { weightsAlong } from '../beam/weights';
import { momentAbout } from '../manifest/order';
import type { Readings } from '../readings';

/** The one line that stands for each section of a card while it is folded. */

/** The worst that is wrong, with how many more there are; or that it fits. */
export const fitSummary =
  (id: string) =>
  ({ fit }: Bench): string => {
    const judge = fit.judge();
    const [worst, ...others] = fit.problemsOf(id);
    if (!judge || !fit.whole()) return '';
    if (!worst) return 'fits';
    return `${judge.shortWords(worst, id)}${others.length > 0 ? `, ${others.length} more` : ''}`;
  };

/** The stations that keep every load state in the band; or in a word why there is none. */
export const roomSummary =
  (id: string, say: Readings) =>
  ({ place, balance }: Bench): string => {
    const zone = place.zone(id);
    if (!zone) return balance.get().band ? '' : 'no CG limits';
    const { allowed } = zone.station;
    if (!allowed) return 'nowhere';
    const [from, to] = [allowed.fromMm, allowed.toMm];
    if (!Number.isFinite(from) && !Number.isFinite(to)) return 'anywhere';
    if (!Number.isFinite(from)) return `up to ${say.station(to)}`;
    return Number.isFinite(to)
      ? `${say.stationFigure(from)}–${say.station(to)}`
      : `from ${say.station(from)}`;
  };

export const sizeSummary =
  (id: string, say: Readings) =>
  ({ document }: Bench): string => {
    const shape = itemById(document.current(), id)?.shape;
    if (!shape) return '';
    const { minMm, maxMm } = shapeBounds(shape);
    return ([0, 1, 2] as const)
      .map((axis) => say.length(maxMm[axis] - minMm[axis]).replace(/\D+$/, ''))
      .join(' × ');
  };

export const momentSummary =
  (id: string, say: Readings) =>
  ({ balance }: Bench): string => {
    const weight = weightsAlong(balance.get(), 0).find(({ sourceId }) => sourceId === id);
    const cgMm = balance.get().cgMm?.[0];
    return !weight || cgMm === undefined ? '' : say.moment(momentAbout(weight.massG, weight.atMm, cgMm));
  };

export const bandSummary =
  (say: Readings) =>
  ({ balance }: Bench): string => {
    const { band } = balance.get();
    return band ? `${say.stationFigure(band.forwardMm)}–${say.station(band.aftMm)}` : 'not said yet';
  };

export const sureSummary =
  (say: Readings) =>
  ({ document, balance }: Bench): string => {
    const error = cgErrorOf(document.current(), balance.get());
    return error ? `± ${say.lengthFine(LINE_95 * error.sigmaMm[0])}` : '';
  };

export const neutralPointSummary =
  (say: Readings) =>
  ({ stability }: Bench): string => {
    const at = stability.get().estimate?.neutralPointMm;
    return at == null ? '' : say.station(at);
  };

export const airframeSummary =
  (say: Readings) =>
  ({ document, balance }: Bench): string => {
    const { bareAirframe } = document.current();
    const structureG = balance
      .get()
      .bodies.reduce((sum, body) => (body.group === 'structure' ? sum + body.mass.massG : sum), 0);
    return `${say.mass(structureG)}${bareAirframe ? ' weighed' : ''}`;
  };

export const fuelSummary =
  (units: UnitSystem) =>
  ({ balance }: Bench): string => {
    const { usableMl } = balance.get();
    return usableMl > 0 ? formatVolume(usableMl, units) : 'none';
  };

/** How many there are of each: bays, hatches, leads. */
export const roomsSummary = ({ document }: Bench): string => {
  const { bays = [], hatches = [], leads = [] } = document.current();
  const counts = [bays, hatches, leads].map(({ length }) => length);
  return counts.some((count) => count > 0) ? counts.join(' · ') : 'none';
};

/** kg·m² to two significant figures: a line of three has room for no more. */
const twoFigures = (kgM2: number) =>
  formatNumber(kgM2, Math.max(0, 1 - Math.floor(Math.log10(Math.max(kgM2, 1e-4)))));

/** About roll, pitch and yaw; close together, so that they stand on one line. */
export const inertiaSummary = ({ balance }: Bench): string => {
  const { xx, yy, zz } = balance.get().inertiaAboutCgGmm2;
  return `${[xx, yy, zz].map((entry) => twoFigures(entry * 1e-9)).join('\u202f·\u202f')}\u202fkg·m²`;
};

/** "62 % on scales": what of the mass at the loading shown was weighed, or found from a weighing. */
export const sourcesSummary = ({ document, balance }: Bench): string => {
  const rests = massOnScales(document.current(), balance.get());
  if (!rests) return '';
  const surely = rests.shares.filter(({ restsOn }) => restsOn === 'weighed' || restsOn === 'measured');
  const share = surely.reduce((sum, { massG }) => sum + massG, 0) / rests.massG;
  return `${Math.floor(100 * share)} %`;
};
