import type { Shape } from './shapes';

/** Works a result out once for each shape object. Shapes are never changed in place, so it stays true. */
export function perShape<T>(work: (shape: Shape) => T): (shape: Shape) => T {
  const known = new WeakMap<Shape, T>();
  return (shape) => {
    let result = known.get(shape);
    if (result === undefined) {
      result = work(shape);
      known.set(shape, result);
    }
    return result;
  };
}
