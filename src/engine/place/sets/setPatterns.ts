import { mostOf, type Pattern, type Patterns } from '../patterns';
import type { RoomPacker } from '../rooms';
import { mostLoosely, roomMeasure } from './roomMeasure';
import type { SetQuestion } from './setProgram';

/** Sets of choices as patterns, which are packed only once they are chosen. */
export interface SetPatterns {
  readonly patterns: Patterns;
  /** Packs those that were chosen; true when one does not fit, or gives less than it seemed to. */
  refine(chosen: readonly Pattern[]): boolean;
}

/** A pattern that gives less by no more than this share of itself has not changed, and so many g·mm. */
const SAME_SHARE = 1e-9;
const SAME_GMM = 1e-3;

export function setPatterns(
  question: SetQuestion,
  packer: RoomPacker,
  sets: readonly (readonly (readonly number[])[])[],
  packed: Map<string, readonly number[] | null>,
): SetPatterns {
  const { problem, rows, rooms } = question;
  const keyOf = ({ choices }: Pattern) => choices.map(({ part, option }) => `${part}.${option}`).join(' ');
  const list: Pattern[] = rooms.flatMap((room, r) => {
    const measure = roomMeasure(problem, room);
    return sets[r]!.flatMap((set): Pattern[] => {
      const choices = set.map((i) => room[i]!);
      const pattern = { room: r, choices, most: [] };
      const packedMost = packed.get(keyOf(pattern));
      if (packedMost === null) return [];
      const most = packedMost ?? rows.map((row) => mostLoosely(problem, room, measure, row, set));
      return [{ ...pattern, most }];
    });
  });
  return {
    patterns: { rooms, patterns: list, loose: rooms.map(() => false) },
    refine(chosen) {
      let changed = false;
      for (const pattern of chosen) {
        const key = keyOf(pattern);
        if (packed.has(key)) continue;
        const most = mostOf(problem, packer, rows, pattern.choices);
        packed.set(key, most);
        const at = list.indexOf(pattern);
        if (most === null) list.splice(at, 1);
        else list[at] = { ...pattern, most };
        changed ||=
          most === null ||
          most.some((value, r) => value < pattern.most[r]! - SAME_GMM - SAME_SHARE * Math.abs(value));
      }
      return changed;
    },
  };
}
