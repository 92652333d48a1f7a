import type { Vec3 } from '../geometry/types';
import type { Choice, Room, RoomPacker } from './rooms';
import type { PlaceProblem } from './types';

/** The chosen parts packed as far forward and as far aft as their masses ask, room by room: middles of boxes, mm. */
export function packedBothWays(
  problem: PlaceProblem,
  rooms: readonly Room[],
  packer: RoomPacker,
  choices: readonly Choice[],
): Vec3[][] {
  return [-1, 1].flatMap((sign) => {
    const centres: Vec3[] = [];
    for (const room of rooms) {
      const inRoom = choices.filter(({ part, option }) =>
        room.some((each) => each.part === part && each.option === option),
      );
      if (inRoom.length === 0) continue;
      const weights = inRoom.map(({ part }) => sign * Math.max(...problem.parts[part]!.massesG));
      const packing = packer.pack(inRoom, weights);
      if (!packing?.centresMm) return [];
      inRoom.forEach(({ part }, k) => {
        centres[part] = packing.centresMm![k]!;
      });
    }
    return [centres];
  });
}
