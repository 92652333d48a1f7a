import type { ShelfPart } from '../../model/airframe/shelf';

/** "106 × 34 × 25 mm": every size of a shape, the unit once at the end. */
export function sizeWords({ shape }: ShelfPart, length: (mm: number) => string): string {
  const sizes = Object.entries(shape).flatMap(([key, value]) =>
    key !== 'kind' && typeof value === 'number' && value > 0 ? [length(value)] : [],
  );
  return sizes.map((size, at) => (at < sizes.length - 1 ? size.replace(/\s.*$/u, '') : size)).join(' × ');
}
