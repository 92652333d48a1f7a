import type { Ask, Port, Reply } from '../../src/workers/envelope';

/** A worker driven by hand. */
export class HandPort<Task, Answer, Progress = never> implements Port<Task, Answer, Progress> {
  readonly asks: Ask<Task>[] = [];
  ended = false;
  onmessage: Port<Task, Answer, Progress>['onmessage'] = null;
  onerror: Port<Task, Answer, Progress>['onerror'] = null;
  onmessageerror: ((event: MessageEvent) => void) | null = null;

  postMessage(ask: Ask<Task>): void {
    // What crosses to a worker is copied, so it must be plain data.
    this.asks.push(structuredClone(ask));
  }

  terminate(): void {
    this.ended = true;
  }

  lastId(): number {
    return this.asks.at(-1)?.id ?? -1;
  }

  say(data: Reply<Answer, Progress>): void {
    this.onmessage?.({ data } as MessageEvent<Reply<Answer, Progress>>);
  }

  answer(answer: Answer, id = this.lastId()): void {
    this.say({ id, kind: 'answer', answer });
  }

  fail(sentence: string): void {
    this.say({ id: this.lastId(), kind: 'failed', sentence });
  }

  breakOff(message: string): void {
    this.onerror?.({ message } as ErrorEvent);
  }
}

/** Opens workers driven by hand, and lists them in the order that they were opened in. */
export function handPorts<Task, Answer, Progress = never>() {
  const ports: HandPort<Task, Answer, Progress>[] = [];
  const open = () => {
    const port = new HandPort<Task, Answer, Progress>();
    ports.push(port);
    return port;
  };
  return { ports, open };
}
