import { packOfShelf, type ShelfPart } from '../airframe/shelf';
import { replacePart } from '../document/edit';
import type { Aircraft, Part } from '../document/types';

/**
 * One of the shelf in the place of a part; the other one of a mirrored pair follows. Its figures are those of the shelf:
 * nothing that was weighed or read of the part before holds for it, and a pack has its own cells. What feeds it stays.
 */
export const withStandIn = (aircraft: Aircraft, part: Part, other: ShelfPart): Aircraft =>
  replacePart(aircraft, part, standIn(part, other));

function standIn(part: Part, other: ShelfPart): Part {
  const {
    inertiaGmm2: _inertia,
    weighedOn: _day,
    plusMinusG: _spread,
    massFrom: _mass,
    sizeFrom: _size,
    power,
    ...rest
  } = part;
  const { name, shape, massG, plusMinusG, massFrom, sizeFrom } = other;
  return {
    ...rest,
    name,
    shape,
    massG,
    ...(plusMinusG !== undefined && { plusMinusG }),
    ...(massFrom && { massFrom }),
    ...(sizeFrom && { sizeFrom }),
    ...(power && { power: powerOf(power, other) }),
  };
}

function powerOf(power: NonNullable<Part['power']>, { name }: ShelfPart): NonNullable<Part['power']> {
  const pack = power.pack && packOfShelf(name);
  if (pack) return { ...power, pack };
  if (!power.use) return power;
  const { measured: _read, ...use } = power.use;
  return { ...power, use };
}
