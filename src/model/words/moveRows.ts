import type { Arrangement, PlaceProblem } from '../../engine/place/types';
import type { Aircraft, Part } from '../document/types';

/** One thing that an arrangement does. Stations and buttlines are those of the part's origin, mm. */
export interface MoveRow {
  readonly id: string;
  readonly name: string;
  readonly role: Part['role'];
  readonly massG: number;
  /** Null for what is put in. */
  readonly from: Part | null;
  /** Null for what comes out. */
  readonly to: Part | null;
  /** Where that is in words: a bay, its rail; empty for ballast. */
  readonly place: string;
}

/** What is different between an aircraft and the same as arranged: what moved, what came in, what went out. */
export function moveRows(
  before: Aircraft,
  after: Aircraft,
  problem: PlaceProblem,
  { placed }: Arrangement,
): MoveRow[] {
  const found = (list: readonly Part[], id: string) => list.find((part) => part.id === id) ?? null;
  const placeOf = (id: string) => {
    const optionId = placed.find((one) => one.id === id)?.optionId;
    const option = problem.parts.find((one) => one.id === id)?.options.find((one) => one.id === optionId);
    return option?.name ?? '';
  };
  const row = (part: Part, from: Part | null, to: Part | null): MoveRow => ({
    id: part.id,
    name: part.name,
    role: part.role,
    massG: part.massG,
    from,
    to,
    place: placeOf(part.id),
  });
  return [
    ...after.parts.flatMap((to) => {
      const from = found(before.parts, to.id);
      return from === to ? [] : [row(to, from, to)];
    }),
    ...before.parts.flatMap((from) => (found(after.parts, from.id) ? [] : [row(from, from, null)])),
  ];
}
