/** What a client needs of a worker, whatever it asks and is told. */
interface Port<Ask, Reply> {
  postMessage(ask: Ask): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<Reply>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/**
 * A worker that may not be silent for ever: one that was asked and has not said anything for `limitS` seconds is ended,
 * and its client is told as of any other failure. Any word from it counts, a report of progress too.
 */
export function watched<Ask, Reply>(open: () => Port<Ask, Reply>, limitS: number): () => Port<Ask, Reply> {
  return () => {
    const worker = open();
    let waiting = 0;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const stopWaiting = () => {
      waiting = 0;
      clearTimeout(timer);
    };
    const wait = () => {
      clearTimeout(timer);
      if (waiting > 0) timer = setTimeout(giveUp, limitS * 1000);
    };
    const giveUp = () => {
      stopWaiting();
      worker.terminate();
      fail(`it said nothing for ${limitS} s`);
    };
    const fail = (message: string) =>
      port.onerror?.(Object.assign(new Event('error'), { message }) as ErrorEvent);
    const port: Port<Ask, Reply> = {
      onmessage: null,
      onerror: null,
      postMessage: (ask) => {
        waiting += 1;
        wait();
        worker.postMessage(ask);
      },
      terminate: () => {
        stopWaiting();
        worker.terminate();
      },
    };
    worker.onmessage = (event) => {
      if (!isProgress(event.data)) waiting = Math.max(0, waiting - 1);
      wait();
      port.onmessage?.(event);
    };
    worker.onerror = (event) => {
      stopWaiting();
      event.preventDefault?.();
      fail(event.message || 'its file could not be fetched, or it broke off');
    };
    return port;
  };
}

const isProgress = (said: unknown): boolean =>
  typeof said === 'object' && said !== null && 'kind' in said && said.kind === 'progress';
