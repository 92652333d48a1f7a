import type { ComponentType, ReactNode } from 'react';
import { createPiece } from '../store/piece';
import { usePiece } from '../store/react';
import { Boundary } from './trouble/Boundary';
import { NotFetched } from './trouble/NotFetched';

interface LaterOptions {
  /** What stands there until it comes. */
  readonly meanwhile?: ReactNode;
  /** What it is, as a sentence begins with it when it fails: "The fuel profile". */
  readonly place: string;
}

/**
 * A component that comes from the page's own files when it is first shown, to keep the first load small. One that does
 * not come, or fails, says so in its place; one that is given `onClose` is a dialog, and so is what it says.
 */
export function later<M, P extends object>(
  load: () => Promise<M>,
  pick: (module: M) => ComponentType<P>,
  { meanwhile = null, place }: LaterOptions,
): ComponentType<P> {
  const piece = createPiece(load, pick);
  return function Later(props: P) {
    const { piece: Loaded, failure } = usePiece(piece);
    const onClose = 'onClose' in props ? (props.onClose as () => void) : undefined;
    if (failure) return <NotFetched place={place} onRetry={piece.retry} onClose={onClose} />;
    if (!Loaded) return meanwhile;
    return (
      <Boundary place={place} floating={onClose !== undefined}>
        <Loaded {...props} />
      </Boundary>
    );
  };
}
