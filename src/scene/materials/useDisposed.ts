import { type DependencyList, useEffect, useMemo } from 'react';

/** Something made by hand that holds memory on the graphics card: disposed when it is replaced or leaves. */
export function useDisposed<T extends { dispose(): void }>(make: () => T, deps: DependencyList): T {
  const made = useMemo(make, deps);
  useEffect(() => () => made.dispose(), [made]);
  return made;
}
