import type { ShelfPart } from '../../model/airframe/shelf';
import {
  chemistries,
  chemistryName,
  controllerOf,
  engineOf,
  motorOf,
  packOf,
  receiverClasses,
  servoClasses,
  turbineOf,
} from '../../model/airframe/shelfMakers';

/** What is asked of a class: a figure within limits, or one of a few words. */
export type Ask =
  | {
      readonly key: string;
      readonly label: string;
      readonly unit: string;
      readonly first: number;
      readonly least: number;
      readonly most: number;
      readonly whole?: boolean;
    }
  | {
      readonly key: string;
      readonly label: string;
      readonly options: readonly { readonly value: string; readonly label: string }[];
    };

/** A kind of thing that is made from its class. */
export interface Maker {
  readonly id: string;
  readonly label: string;
  readonly asks: readonly Ask[];
  readonly make: (
    answers: Readonly<Record<string, string>>,
    figures: Readonly<Record<string, number>>,
  ) => ShelfPart;
}

const figure = (
  key: string,
  label: string,
  unit: string,
  [first, least, most]: readonly [number, number, number],
  whole = false,
): Ask => ({ key, label, unit, first, least, most, whole });

/** "Servo, micro" as an option "micro". */
const classes = (parts: readonly ShelfPart[]) =>
  parts.map(({ name }) => ({ value: name, label: name.replace(/^\w+, /, '') }));
const named = (parts: readonly ShelfPart[], name: string | undefined): ShelfPart =>
  parts.find((part) => part.name === name) ?? parts[0]!;

export const makers: readonly Maker[] = [
  {
    id: 'pack',
    label: 'Pack',
    asks: [
      {
        key: 'chemistry',
        label: 'Chemistry',
        options: chemistries.map((value) => ({ value, label: chemistryName(value) })),
      },
      figure('cells', 'Cells in series', 'S', [3, 1, 14], true),
      figure('capacity', 'Capacity', 'mAh', [2200, 50, 50_000]),
    ],
    make: ({ chemistry }, { cells = 3, capacity = 2200 }) =>
      packOf({
        chemistry: chemistries.find((each) => each === chemistry) ?? 'lipo',
        cells,
        capacityMah: capacity,
      }),
  },
  {
    id: 'servo',
    label: 'Servo',
    asks: [{ key: 'class', label: 'Size class', options: classes(servoClasses) }],
    make: (answers) => named(servoClasses, answers.class),
  },
  {
    id: 'receiver',
    label: 'Receiver',
    asks: [{ key: 'class', label: 'Size class', options: classes(receiverClasses) }],
    make: (answers) => named(receiverClasses, answers.class),
  },
  {
    id: 'motor',
    label: 'Motor',
    asks: [figure('power', 'Electrical power', 'W', [600, 5, 20_000])],
    make: (_, { power = 600 }) => motorOf(power),
  },
  {
    id: 'controller',
    label: 'Speed controller',
    asks: [figure('current', 'Current', 'A', [60, 1, 400])],
    make: (_, { current = 60 }) => controllerOf(current),
  },
  {
    id: 'engine',
    label: 'Engine',
    asks: [
      {
        key: 'fuel',
        label: 'Fuel',
        options: [
          { value: 'petrol', label: 'petrol' },
          { value: 'methanol', label: 'methanol' },
        ],
      },
      figure('displacement', 'Displacement', 'cc', [30, 0.5, 300]),
    ],
    make: ({ fuel }, { displacement = 30 }) =>
      engineOf(fuel === 'methanol' ? 'methanol' : 'petrol', displacement),
  },
  {
    id: 'turbine',
    label: 'Turbine',
    asks: [figure('thrust', 'Thrust', 'N', [100, 10, 500])],
    make: (_, { thrust = 100 }) => turbineOf(thrust),
  },
];
