import { line, type Shape, say } from './drawing';

/** What a check ruler measures: 100 mm, and 4 in of 25.4 mm. */
export const RULER_MM = 100;
const INCH_MM = 25.4;
export const RULER_IN_MM = 4 * INCH_MM;
/** Height of both rulers with their words, mm. */
export const RULERS_HIGH_MM = 17;

/** A ruler of 100 mm and one of 4 in, one under the other, to hold a real rule against. */
export function rulers(leftMm: number, topMm: number): readonly Shape[] {
  const mmY = topMm + 6;
  const inY = topMm + 14;
  const at = (x: number) => leftMm + x;
  const tick = (x: number, y: number, high: number) => line([at(x), y], [at(x), y - high], 'thin');
  return [
    line([at(0), mmY], [at(RULER_MM), mmY], 'thin', 'ruler-mm'),
    ...Array.from({ length: 101 }, (_, mm) => tick(mm, mmY, mm % 10 === 0 ? 4 : mm % 5 === 0 ? 2.6 : 1.5)),
    line([at(0), inY], [at(RULER_IN_MM), inY], 'thin', 'ruler-in'),
    ...Array.from({ length: 33 }, (_, eighth) =>
      tick((eighth * INCH_MM) / 8, inY, eighth % 8 === 0 ? 4 : eighth % 4 === 0 ? 2.6 : 1.5),
    ),
    say([at(RULER_IN_MM) + 3, mmY], 'must measure 100 mm'),
    say([at(RULER_IN_MM) + 3, inY], 'must measure 4 in'),
  ];
}
