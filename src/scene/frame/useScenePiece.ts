import { useEffect } from 'react';
import type { Piece } from '../../store/piece';
import { useBench, usePiece } from '../../store/react';

/** A piece of the scene that comes after the first picture; null until then. `what` begins the sentence when it does not. */
export function useScenePiece<T>(piece: Piece<T>, what: string): T | null {
  const { notice } = useBench();
  const { piece: fetched, failure } = usePiece(piece);
  useEffect(() => {
    if (failure)
      notice.tell({
        about: what,
        tone: 'bad',
        text: `${what} could not be fetched: the server has stopped or is out of reach. All else works on.`,
        actions: [{ label: 'Retry', run: piece.retry }],
      });
    else notice.drop(what);
  }, [notice, failure, piece, what]);
  return fetched;
}
