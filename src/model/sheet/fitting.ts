import { faceStation } from '../airframe/align';
import { listed } from '../document/inWords';
import type { Aircraft } from '../document/types';
import { ownUnit } from '../units';
import type { Say } from '../words/say';
import { type Block, cell, columnsOf, heading, type Row, tickBox, words } from './blocks';
import { type Numbered, numbered } from './numbered';
import { bare, type OrderSearch, standsIn, wayIn } from './parts';

/** What goes in first, with a box to tick and the station of the face that a tape reaches. */
export function fittingBlocks(
  aircraft: Aircraft,
  { say, wideMm, search }: { readonly say: Say; readonly wideMm: number; readonly search: OrderSearch },
): readonly Block[] {
  const things = numbered(aircraft);
  const found = search.state === 'found' ? search.order : null;
  const places = new Map(found?.order.map(({ id }, at) => [id, at]) ?? []);
  const inside = things.filter(({ inHull }) => inHull);
  const ordered = [...inside].sort(
    (a, b) => (places.get(a.id) ?? Number.MAX_SAFE_INTEGER) - (places.get(b.id) ?? Number.MAX_SAFE_INTEGER),
  );
  const outside = things.filter(({ inHull }) => !inHull);
  const row = (thing: Numbered, at: number | null): Row => ({
    id: thing.id,
    cells: [
      tickBox,
      cell(at === null ? '' : String(at + 1)),
      cell(String(thing.number)),
      cell(thing.name, after(aircraft, thing, search)),
      cell(bare(faceStation(thing.item, 'front') - say.fromMm, say)),
      cell(bare(faceStation(thing.item, 'rear') - say.fromMm, say)),
      cell(wayIn(aircraft, thing, search)),
      cell(standsIn(aircraft, thing)),
    ],
  });
  const length = ownUnit('length', say.units).symbol;
  const columns = columnsOf(wideMm, [
    ['Done', 10, 'centre'],
    ['Order', 10, 'right'],
    ['No.', 9, 'right'],
    ['Part', 58],
    [`Front face ${length}`, 21, 'right'],
    [`Rear face ${length}`, 21, 'right'],
    ['Through', 30],
    ['Stands in', 27],
  ]);
  const rows = [
    ...ordered.map((thing) => row(thing, places.get(thing.id) ?? null)),
    ...outside.map((thing) => row(thing, null)),
  ];
  if (rows.length === 0) return [heading('Order of fitting'), words('No part and no tank is aboard yet.')];
  return [
    heading('Order of fitting'),
    words(orderWords(search)),
    { kind: 'table', id: 'fitting', columns, rows },
    ...(found?.stuck ?? []).map(({ sentence }) => words(sentence, 'note')),
  ];
}

function orderWords(search: OrderSearch): string {
  switch (search.state) {
    case 'none':
      return 'No order was looked for.';
    case 'searching':
      return 'The order is being looked for; wait for it before printing.';
    case 'failed':
      return `No order: ${search.sentence}`;
    case 'found':
      return 'First in first: one order that was found; there may be others. What has no number in the order stands outside the hulls, or no way in was found for it, which is no proof that there is none.';
  }
}

/** "before Receiver": what it would be in the way of, or would block. */
function after(aircraft: Aircraft, { id }: Numbered, search: OrderSearch): string | undefined {
  if (search.state !== 'found') return undefined;
  const names = search.order.before
    .filter(({ firstId }) => firstId === id)
    .map(({ thenId }) => numbered(aircraft).find((each) => each.id === thenId)?.name ?? thenId);
  return names.length > 0 ? `before ${listed(names)}` : undefined;
}
