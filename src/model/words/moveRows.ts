import type { Arrangement, PlaceProblem } from '../../engine/place/types';
import type { Item } from '../document/edit';
import type { Aircraft, Part } from '../document/types';
import { inFittingOrder, moveReason } from '../place/moveReasons';

/** One move of an arrangement. Stations and buttlines are those of the part's origin, mm. */
export interface MoveRow {
  readonly id: string;
  readonly name: string;
  /** Null for a tank. */
  readonly role: Part['role'] | null;
  readonly massG: number;
  /** Null for what is put in. */
  readonly from: Item | null;
  /** Null for what comes out. */
  readonly to: Item | null;
  /** Where that is in words: a bay, its rail; empty for ballast. */
  readonly place: string;
  /** Why, in a few words: to make room for another, to bring weight forward. */
  readonly why: string;
}

/** What is different between an aircraft and the same as arranged, in the order in which it is done. */
export function moveRows(
  before: Aircraft,
  after: Aircraft,
  problem: PlaceProblem,
  { placed }: Arrangement,
): MoveRow[] {
  const itemsOf = ({ parts, tanks }: Aircraft): readonly Item[] => [...parts, ...tanks];
  const found = (list: readonly Item[], id: string) => list.find((item) => item.id === id) ?? null;
  const [old, now] = [itemsOf(before), itemsOf(after)];
  const placeOf = (id: string) => {
    const optionId = placed.find((each) => each.id === id)?.optionId;
    const option = problem.parts.find((each) => each.id === id)?.options.find((each) => each.id === optionId);
    return option?.name ?? '';
  };
  const moves = [
    ...now.flatMap((to) => {
      const from = found(old, to.id);
      return from === to ? [] : [{ id: to.id, from, to }];
    }),
    ...old.flatMap((from) => (found(now, from.id) ? [] : [{ id: from.id, from, to: null }])),
  ];
  return inFittingOrder(before, moves).map(({ id, from, to }): MoveRow => {
    const item = (to ?? from)!;
    return {
      id,
      name: item.name,
      role: 'role' in item ? item.role : null,
      massG: 'massG' in item ? item.massG : item.emptyMassG,
      from,
      to,
      place: placeOf(id),
      why: moveReason({ id, from, to }, moves),
    };
  });
}
