import type { Balance } from '../../balance/balance';
import { shownText } from '../../document/names';
import type { Aircraft } from '../../document/types';
import { formatNumber, ownUnit, shownPlaces, type UnitSystem } from '../../units';
import type { WorkingSheet } from '../../words/workingSheet';
import { GMM2_PER_KGM2 } from '../quantity';

/** Axes across which distance counts for a turn about the third. */
const ACROSS = { roll: [1, 2], pitch: [0, 2], yaw: [0, 1] } as const;
const TENSOR = { roll: 'xx', pitch: 'yy', yaw: 'zz' } as const;
/** Decimals of kg·m² on screen. */
const SHOWN = 4;
const MOST_EXTRA = 6;

interface Line {
  readonly name: string;
  readonly massG: number;
  /** From the axis through the CG, mm. */
  readonly armMm: number;
  /** About its own middle, kg·m². */
  readonly itself: number;
}

/** Inertia about an axis through the CG: m·r² of everything, and what each has about its own middle (Steiner). */
export function inertiaSheet(
  aircraft: Aircraft,
  balance: Balance,
  about: keyof typeof ACROSS,
  units: UnitSystem,
): WorkingSheet | null {
  const { cgMm, inertiaAboutCgGmm2 } = balance;
  if (!cgMm) return null;
  const [a, b] = ACROSS[about];
  const nameOf = (tankId: string) => aircraft.tanks.find(({ id }) => id === tankId)?.name ?? tankId;
  const aboard = [
    ...balance.bodies.map(({ name, mass }) => ({ name, mass })),
    ...balance.liquids.map(({ tankId, mass }) => ({
      name: `${aircraft.fuel?.name ?? 'Liquid'} in ${nameOf(tankId)}`,
      mass,
    })),
  ];
  const lines = aboard.flatMap(({ name, mass }): Line[] => {
    if (!mass.cgMm) return [];
    const armMm = Math.hypot(mass.cgMm[a] - cgMm[a], mass.cgMm[b] - cgMm[b]);
    const itself = mass.inertiaAboutCgGmm2[TENSOR[about]] / GMM2_PER_KGM2;
    return [{ name: shownText(name), massG: mass.massG, armMm, itself }];
  });
  return written(lines, inertiaAboutCgGmm2[TENSOR[about]] / GMM2_PER_KGM2, about, units);
}

function written(lines: readonly Line[], whole: number, about: string, units: UnitSystem): WorkingSheet {
  const [mass, arm] = [ownUnit('mass', units), ownUnit('length', units)];
  const massPlaces = shownPlaces('mass', units);
  const armPlaces = shownPlaces('length', units, true);
  const perUnit = (mass.size * arm.size ** 2) / GMM2_PER_KGM2;
  let places = SHOWN + 1;
  const at = (figure: number) => Number(figure.toFixed(places));
  const rowsAt = () =>
    lines.map(({ name, massG, armMm, itself }) => {
      const m = Number((massG / mass.size).toFixed(massPlaces + places - SHOWN - 1));
      const r = Number((armMm / arm.size).toFixed(armPlaces + places - SHOWN - 1));
      return { name, m, r, byArm: at(m * r * r * perUnit), itself: at(itself) };
    });
  const totalOf = (rows: ReturnType<typeof rowsAt>) =>
    at(rows.reduce((sum, { byArm, itself }) => sum + byArm + itself, 0));
  while (places < SHOWN + MOST_EXTRA && totalOf(rowsAt()).toFixed(SHOWN) !== whole.toFixed(SHOWN))
    places += 1;
  const rows = rowsAt();
  const text = (figure: number) => formatNumber(figure, places);
  const byArm = text(rows.reduce((sum, row) => sum + row.byArm, 0));
  const itself = text(rows.reduce((sum, row) => sum + row.itself, 0));
  const extra = places - SHOWN - 1;
  return {
    says: `Everything aboard about the ${about} axis through the CG: mass × distance², and what each has about its own middle.`,
    head: ['', `Mass, ${mass.symbol}`, `Distance, ${arm.symbol}`, 'm·r², kg·m²', 'Its own, kg·m²'],
    rows: rows.map(({ name, m, r, ...row }) => [
      name,
      formatNumber(m, massPlaces + extra),
      formatNumber(r, armPlaces + extra),
      text(row.byArm),
      text(row.itself),
    ]),
    total: ['Total', '', '', byArm, itself],
    steps: [
      'Inertia = all m·r² + all of their own',
      `${byArm} + ${itself} = ${formatNumber(whole, SHOWN)} kg·m²`,
    ],
  };
}
