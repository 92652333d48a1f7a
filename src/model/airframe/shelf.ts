import type { Part, PowerPack, Role } from '../document/types';

/** A part as it lies on the shelf, turned as it is usually mounted: without an id or a place. */
export type ShelfPart = Omit<Part, 'id' | 'positionMm'>;

/** Lines of a shelf: name, mass in g, then sizes in mm. */
type BoxLine = readonly [name: string, massG: number, lengthMm: number, widthMm: number, heightMm: number];
type RoundLine = readonly [name: string, massG: number, lengthMm: number, diameterMm: number];

const typical = {
  yawDeg: 0,
  pitchDeg: 0,
  rollDeg: 0,
  massFrom: 'typical',
  sizeFrom: 'typical',
  notes: 'Typical figures, weigh yours.',
} as const;

/** What is made to stand outside. */
const inTheOpen = (part: ShelfPart): ShelfPart => ({ ...part, inTheOpen: true });

const boxes = (role: Role, ...lines: readonly BoxLine[]): readonly ShelfPart[] =>
  lines.map(([name, massG, lengthMm, widthMm, heightMm]) => ({
    name,
    role,
    shape: { kind: 'box', lengthMm, widthMm, heightMm },
    massG,
    ...typical,
  }));

const cylinders = (role: Role, ...lines: readonly RoundLine[]): readonly ShelfPart[] =>
  lines.map(([name, massG, lengthMm, diameterMm]) => ({
    name,
    role,
    shape: { kind: 'cylinder', lengthMm, diameterMm },
    massG,
    ...typical,
  }));

const cones = (role: Role, ...lines: readonly RoundLine[]): readonly ShelfPart[] =>
  lines.map(([name, massG, lengthMm, rearDiameterMm]) => ({
    name,
    role,
    shape: { kind: 'frustum', lengthMm, frontDiameterMm: 0, rearDiameterMm },
    massG,
    ...typical,
  }));

/**
 * Generic parts to start from, by role. Sizes and masses are common practice, no source, rounded; each is
 * marked typical. Packs: lithium polymer, about 150 Wh/kg as bought; ballast: lead 11.3, steel 7.85 g/ml.
 */
export const shelf: readonly ShelfPart[] = [
  ...boxes(
    'energy',
    ['Pack 2S 1000 mAh', 58, 70, 35, 13],
    ['Pack 3S 2200 mAh', 185, 106, 34, 25],
    ['Pack 4S 3300 mAh', 345, 135, 43, 30],
    ['Pack 6S 5000 mAh', 760, 155, 49, 50],
    ['Pack 12S 5000 mAh', 1500, 310, 49, 50],
    ['Receiver pack 2S 2500 mAh', 110, 70, 38, 20],
    ['Ignition pack 2S 1800 mAh', 96, 68, 36, 18],
  ),
  ...boxes(
    'radio',
    ['Receiver', 18, 47, 25, 14],
    ['Receiver, small', 6, 32, 20, 8],
    ['Flight data logger', 28, 55, 32, 14],
    ['Gyro', 14, 33, 24, 14],
    ['Tracker', 32, 60, 30, 16],
    ['Lost-model buzzer', 9, 30, 16, 12],
  ),
  ...boxes(
    'control',
    ['Servo, micro', 12, 23, 12, 27],
    ['Servo, standard', 48, 41, 20, 38],
    ['Servo, large', 190, 66, 30, 58],
  ),
  ...boxes(
    'powerplant',
    ['Petrol engine 20 cc', 950, 150, 90, 135],
    ['Petrol engine 35 cc', 1350, 175, 100, 160],
    ['Petrol engine 60 cc', 1950, 190, 130, 180],
    ['Ignition unit', 110, 70, 45, 25],
    ['Turbine control unit', 62, 80, 42, 20],
    ['Speed controller 40 A', 42, 60, 28, 12],
    ['Speed controller 120 A', 140, 95, 50, 28],
  ),
  ...cylinders(
    'powerplant',
    ['Turbine 80 N', 1050, 230, 90],
    ['Turbine 140 N', 1550, 290, 108],
    ['Fuel pump', 58, 62, 28],
    ['Motor, 300 W class', 105, 38, 35],
    ['Motor, 1.5 kW class', 310, 58, 50],
    ['Motor, 4 kW class', 690, 78, 63],
  ),
  ...cylinders(
    'powerplant',
    ['Propeller 12 in, electric', 28, 12, 305],
    ['Propeller 22 in, wood', 135, 24, 559],
  ).map(inTheOpen),
  ...cones('powerplant', ['Spinner 70 mm', 52, 75, 70]).map(inTheOpen),
  ...boxes('payload', ['Camera, small', 145, 60, 42, 40], ['Camera, system', 620, 110, 125, 70]),
  ...cylinders('payload', ['Gimbal, two-axis', 240, 90, 85]),
  ...cylinders('undercarriage', ['Wheel 70 mm', 34, 25, 70], ['Wheel 120 mm', 118, 42, 120]).map((wheel) => ({
    ...inTheOpen(wheel),
    yawDeg: 90,
  })),
  ...boxes(
    'ballast',
    ['Lead block 50 g', 50, 22, 20, 10],
    ['Lead block 200 g', 200, 36, 33, 15],
    ['Steel block 100 g', 100, 32, 20, 20],
  ),
];

/** The cells of a pack of the shelf, which its name says; null for anything else. */
export function packOfShelf(name: string): PowerPack | null {
  const [, cells, capacityMah] = /(\d+)S (\d+) mAh/.exec(name) ?? [];
  return cells && capacityMah
    ? { chemistry: 'lipo', cells: Number(cells), capacityMah: Number(capacityMah) }
    : null;
}
