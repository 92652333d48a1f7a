/** Steps between 1:1 and 1:10, and so on by tens; 1:2, 1:5 and 1:10 are those of ISO 5455, the others lie between. */
const STEPS = [1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8] as const;

/** Beyond every scale that anything is drawn at. */
const FARTHEST = 1e9;

/** The largest standard scale, as what 1 mm on paper stands for, at which a length fits a room; 1:1 at the most. */
export function chooseScale(lengthMm: number, roomMm: number): number {
  if (!(lengthMm > 0)) return 1;
  if (!(roomMm > 0)) return FARTHEST;
  for (let ten = 1; ten < FARTHEST; ten *= 10) {
    const step = STEPS.find((each) => lengthMm <= each * ten * roomMm * (1 + 1e-9));
    if (step !== undefined) return step * ten;
  }
  return FARTHEST;
}

/** "1:8". */
export const scaleWords = (scale: number): string => `1:${scale}`;
