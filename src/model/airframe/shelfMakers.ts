import { cellFigures, typicalPackMass } from '../../engine/power/cells';
import type { Part, Role } from '../document/types';
import type { ShelfPart } from './shelf';

/**
 * Things made from their class: what a kind of thing of some size usually weighs and measures, with its spread. The masses
 * are fits to what is on the market, rounded; common practice, no source, where none is named. A spread is ±, 95 % of what
 * is sold: two standard uncertainties, as a share of the mass.
 */
const round = (value: number): number => {
  if (value >= 100) return Math.round(value / 5) * 5;
  return value >= 10 ? Math.round(value) : Math.max(0.1, Math.round(10 * value) / 10);
};
const roundMm = (value: number) => Math.max(1, Math.round(value));

interface Made {
  readonly name: string;
  readonly role: Role;
  readonly massG: number;
  readonly spread: number;
  readonly shape: Part['shape'];
}

const made = ({ name, role, massG, spread, shape }: Made): ShelfPart => ({
  name,
  role,
  shape,
  massG: round(massG),
  plusMinusG: round(spread * massG),
  yawDeg: 0,
  pitchDeg: 0,
  rollDeg: 0,
  massFrom: 'typical',
  sizeFrom: 'typical',
  notes: 'Typical of its class, weigh yours.',
});

const box = (lengthMm: number, widthMm: number, heightMm: number): Part['shape'] => ({
  kind: 'box',
  lengthMm: roundMm(lengthMm),
  widthMm: roundMm(widthMm),
  heightMm: roundMm(heightMm),
});

export const chemistries = ['lipo', 'li-ion', 'lifepo4', 'nimh'] as const;
export type Chemistry = (typeof chemistries)[number];

/** Whole packs with leads and sleeve, as the wiring knows them by its own name; what a litre stores is common practice. */
const cellOf: Readonly<
  Record<
    Chemistry,
    {
      readonly name: string;
      readonly of: keyof typeof cellFigures;
      readonly whPerL: number;
    }
  >
> = {
  lipo: { name: 'lithium polymer', of: 'lipo', whPerL: 278 },
  'li-ion': { name: 'lithium ion, round cells', of: 'liion', whPerL: 420 },
  lifepo4: { name: 'iron phosphate', of: 'life', whPerL: 190 },
  nimh: { name: 'nickel metal hydride', of: 'nimh', whPerL: 190 },
};

export const chemistryName = (chemistry: Chemistry): string => cellOf[chemistry].name;

export interface PackClass {
  readonly chemistry: Chemistry;
  readonly cells: number;
  readonly capacityMah: number;
}

/** More cells than this are two packs end to end. */
const CELLS_OF_BLOCK = 8;

/** A pack of cells in series. */
export function packOf({ chemistry, cells, capacityMah }: PackClass): ShelfPart {
  const { of, whPerL } = cellOf[chemistry];
  const energyWh = (cells * cellFigures[of].nominalV * capacityMah) / 1000;
  const { massG, plusMinusG } = typicalPackMass(of, cells, capacityMah);
  const blocks = cells > CELLS_OF_BLOCK ? 2 : 1;
  const volumeMm3 = (1e6 * energyWh) / whPerL / blocks;
  // Pouches are stacked, each some 8 mm thick, three times as long as wide; round cells lie side by side.
  const thickMm =
    chemistry === 'lipo'
      ? (cells / blocks) * 8 * (capacityMah / 3300) ** 0.2
      : Math.cbrt(volumeMm3 / (3 * 1.4));
  const lengthToWidth = chemistry === 'lipo' ? 3.1 : 3 / 1.4;
  const widthMm = Math.sqrt(volumeMm3 / thickMm / lengthToWidth);
  const word = chemistry === 'lipo' ? '' : ` ${cellOf[chemistry].name}`;
  return made({
    name: `Pack ${cells}S ${capacityMah} mAh${word}`,
    role: 'energy',
    massG,
    spread: plusMinusG / massG,
    shape: box(blocks * lengthToWidth * widthMm, widthMm, thickMm),
  });
}

/** A motor by its electrical power, W. */
export function motorOf(powerW: number): ShelfPart {
  const massG = 105 * (powerW / 300) ** 0.73;
  const diameterMm = Math.cbrt((4e3 * massG) / (2.8 * Math.PI * 1.16));
  return made({
    name: `Motor, ${powerW} W`,
    role: 'powerplant',
    massG,
    spread: 0.3,
    shape: { kind: 'cylinder', lengthMm: roundMm(1.16 * diameterMm), diameterMm: roundMm(diameterMm) },
  });
}

/** A speed controller by the current that it carries, A. */
export const controllerOf = (currentA: number): ShelfPart =>
  made({
    name: `Speed controller, ${currentA} A`,
    role: 'powerplant',
    massG: 42 * (currentA / 40) ** 1.1,
    spread: 0.35,
    shape: box(
      60 * (currentA / 40) ** 0.4,
      28 * (currentA / 40) ** 0.49,
      Math.max(4, 12 * (currentA / 40) ** 0.66),
    ),
  });

/** An engine with its silencer by displacement, cc. */
export function engineOf(fuel: 'petrol' | 'methanol', displacementCc: number): ShelfPart {
  const petrol = fuel === 'petrol';
  const massG = petrol ? 950 * (displacementCc / 20) ** 0.65 : 450 * (displacementCc / 7.5) ** 0.8;
  const size = Math.cbrt((1000 * massG) / (petrol ? 0.48 : 0.62) / (1.5 * 0.95 * 1.35));
  return made({
    name: `${petrol ? 'Petrol' : 'Methanol'} engine, ${displacementCc} cc`,
    role: 'powerplant',
    massG,
    spread: 0.2,
    shape: box(1.5 * size, 0.95 * size, 1.35 * size),
  });
}

/** A turbine by its thrust, N. */
export const turbineOf = (thrustN: number): ShelfPart =>
  made({
    name: `Turbine, ${thrustN} N`,
    role: 'powerplant',
    massG: 1050 * (thrustN / 80) ** 0.7,
    spread: 0.15,
    shape: {
      kind: 'cylinder',
      lengthMm: roundMm(230 * (thrustN / 80) ** 0.41),
      diameterMm: roundMm(90 * (thrustN / 80) ** 0.32),
    },
  });

/** A class by name: mass in g, its spread, sizes in mm. */
type ClassLine = readonly [
  name: string,
  massG: number,
  spread: number,
  size: readonly [number, number, number],
];

const servoLines: readonly ClassLine[] = [
  ['sub-micro', 4, 0.4, [20, 8, 20]],
  ['micro', 11, 0.3, [23, 12, 26]],
  ['mini', 20, 0.3, [29, 13, 31]],
  ['thin, for wings', 25, 0.3, [31, 10, 36]],
  ['standard', 48, 0.25, [41, 20, 38]],
  ['large', 120, 0.35, [59, 29, 52]],
  ['giant', 190, 0.25, [66, 30, 58]],
];

const receiverLines: readonly ClassLine[] = [
  ['micro', 3, 0.5, [24, 14, 6]],
  ['small', 6, 0.4, [32, 20, 8]],
  ['full', 18, 0.4, [47, 25, 14]],
  ['with its own power supply', 60, 0.5, [85, 60, 18]],
];

const ofClass = (kind: string, role: Role, [name, massG, spread, size]: ClassLine): ShelfPart =>
  made({ name: `${kind}, ${name}`, role, massG, spread, shape: box(...size) });

/** Servos and receivers by their size class, the smallest first. */
export const servoClasses: readonly ShelfPart[] = servoLines.map((line) => ofClass('Servo', 'control', line));
export const receiverClasses: readonly ShelfPart[] = receiverLines.map((line) =>
  ofClass('Receiver', 'radio', line),
);

/** What of the fixed shelf a class stands for; the shelf shows the class instead. */
export const madeByClass = (name: string): boolean =>
  /^(Pack |Servo,|Receiver(,|$)|Motor,|Petrol engine|Turbine \d|Speed controller)/.test(name);
