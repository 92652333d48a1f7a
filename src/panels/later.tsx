import { type ComponentType, lazy, Suspense } from 'react';

/** A component that comes from the page's own files when it is first shown, to keep the first load small. */
export function later<P extends object>(load: () => Promise<ComponentType<P>>): ComponentType<P> {
  // The props pass through untouched; lazy() cannot say so for a type it does not know.
  const Loaded = lazy(async () => ({ default: await load() })) as unknown as ComponentType<P>;
  return function Later(props: P) {
    return (
      <Suspense fallback={null}>
        <Loaded {...props} />
      </Suspense>
    );
  };
}
