import * as v from 'valibot';
import type { ShelfPart } from '../airframe/shelf';
import { part as partSchema } from '../document/schema/aircraft';

/** Whether a value from a store is a thing that can lie on the shelf: a part without an id and a place. */
export const isShelfPart = (value: unknown): value is ShelfPart =>
  typeof value === 'object' &&
  value !== null &&
  v.safeParse(partSchema, { ...value, id: 'x', positionMm: [0, 0, 0] }).success;
