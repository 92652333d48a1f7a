/** Work done one after the other, whatever became of what came before it. */
export interface Turns {
  /** Does something after all before it; the failure, tell too, where it did not work. */
  inTurn<T>(work: () => Promise<T>): Promise<T | Error>;
  /** When all that has been given so far is done. */
  settled(): Promise<unknown>;
}

export function createTurns(tell: { went(): void; refused(error: unknown): void }): Turns {
  let queue: Promise<unknown> = Promise.resolve();
  return {
    inTurn: (work) => {
      const turn = queue.then(work).then(
        (done) => {
          tell.went();
          return done;
        },
        (error: unknown) => {
          tell.refused(error);
          return error instanceof Error ? error : new Error(String(error));
        },
      );
      queue = turn;
      return turn;
    },
    settled: () => queue,
  };
}
