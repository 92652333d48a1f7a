import { expect, test } from 'vitest';
import { ifNobodyHas, type OneTab, oneTab, type TabLocks } from '../../src/files/oneTab';
import { browserLocks } from './browserLocks';

const soon = () => new Promise((done) => setTimeout(done, 1));

function tab(locks: TabLocks, name: string, log: string[]): OneTab {
  const made = oneTab(locks, null, {
    keeps: (late) => log.push(`${name} keeps${late ? ' late' : ''}`),
    waits: () => log.push(`${name} waits`),
    gives: () => log.push(`${name} gives`),
    company: () => {},
  });
  made.goTo('knot');
  return made;
}

test('the first tab keeps the work; the second waits, and keeps it once the first is closed', async () => {
  const { locks, closeHolder } = browserLocks();
  const log: string[] = [];
  tab(locks, 'first', log);
  tab(locks, 'second', log);
  await soon();
  expect(log).toEqual(['first keeps', 'second waits']);
  closeHolder('counterpoise.keeper.knot');
  await soon();
  expect(log.slice(2)).toEqual(['second keeps late']);
});

test('a tab may take over, to and fro, and at no moment do two keep', async () => {
  const { locks } = browserLocks();
  const log: string[] = [];
  const first = tab(locks, 'first', log);
  const second = tab(locks, 'second', log);
  await soon();
  log.length = 0;
  second.takeOver();
  await soon();
  first.takeOver();
  await soon();
  second.takeOver();
  await soon();
  expect(log).toEqual([
    'second keeps late',
    'first waits',
    'first keeps late',
    'second waits',
    'second keeps late',
    'first waits',
  ]);
});

test('without locks each tab believes that it keeps the work', () => {
  const log: string[] = [];
  oneTab(null, null, {
    keeps: (late) => log.push(`keeps ${late}`),
    waits: () => {},
    gives: () => {},
    company: () => {},
  }).goTo('knot');
  expect(log).toEqual(['keeps false']);
});

test('without locks work on an aircraft of the fleet is done; with them only where no tab has it', async () => {
  let done = 0;
  const work = async () => {
    done += 1;
  };
  expect([await ifNobodyHas(null, 'knot', work), done]).toEqual([true, 1]);
  const { locks } = browserLocks();
  oneTab(locks, null, { keeps: () => {}, waits: () => {}, gives: () => {}, company: () => {} }).goTo('knot');
  expect([await ifNobodyHas(locks, 'knot', work), done]).toEqual([false, 1]);
  expect([await ifNobodyHas(locks, 'ruff', work), done]).toEqual([true, 2]);
});

/** The channel of one browser: what one end says all others hear. */
function browserChannel() {
  const ends: { onmessage: ((event: MessageEvent) => unknown) | null }[] = [];
  return () => {
    const end = {
      onmessage: null as ((event: MessageEvent) => unknown) | null,
      postMessage: (data: unknown) => {
        for (const other of ends) if (other !== end) other.onmessage?.({ data } as MessageEvent);
      },
    };
    ends.push(end);
    return end as never;
  };
}

test('two tabs on one aircraft hear of each other, and of one that goes; others hear nothing', () => {
  const channel = browserChannel();
  const heard: string[] = [];
  const open = (name: string, fleetId: string) => {
    const made = oneTab(null, channel(), {
      keeps: () => {},
      waits: () => {},
      gives: () => {},
      company: (there) => heard.push(`${name} ${there ? 'has company' : 'is alone'}`),
    });
    made.goTo(fleetId);
    return made;
  };
  open('first', 'knot');
  open('third', 'ruff');
  const second = open('second', 'knot');
  second.goTo('ruff');
  expect(heard).toEqual([
    'second has company',
    'first has company',
    'first is alone',
    'second has company',
    'third has company',
  ]);
});

test('tabs with different aircraft each keep theirs; one that goes to another’s aircraft waits for it', async () => {
  const { locks } = browserLocks();
  const log: string[] = [];
  const first = tab(locks, 'first', log);
  const second = oneTab(locks, null, {
    keeps: (late) => log.push(`second keeps${late ? ' late' : ''}`),
    waits: () => log.push('second waits'),
    gives: () => {},
    company: () => {},
  });
  second.goTo('ruff');
  await soon();
  second.goTo('knot');
  await soon();
  first.goTo('ruff');
  await soon();
  expect(log).toEqual(['first keeps', 'second keeps', 'second waits', 'first keeps', 'second keeps late']);
});

test('a tab that gives its aircraft up first keeps what it has not kept', async () => {
  const { locks } = browserLocks();
  const channel = browserChannel();
  const log: string[] = [];
  const open = (name: string) => {
    const made = oneTab(locks, channel(), {
      keeps: (late) => log.push(`${name} keeps${late ? ' late' : ''}`),
      waits: () => log.push(`${name} waits`),
      gives: () => log.push(`${name} gives`),
      company: () => {},
    });
    made.goTo('knot');
    return made;
  };
  open('first');
  await soon();
  const second = open('second');
  await soon();
  log.length = 0;
  second.takeOver();
  await soon();
  expect(log).toEqual(['first gives', 'first waits', 'second keeps late']);
});
