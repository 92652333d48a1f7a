import * as v from 'valibot';
import { trace, traceImage } from '../document/schema/traces';
import { headOf, type Laid, MOST_SIDE_PX } from '../document/traces';

const laid = v.object({ trace, picture: traceImage });

/** A drawing as a tab has kept it; null where that is none. */
export function readDrawing(json: unknown): Laid | null {
  const read = v.safeParse(laid, json);
  if (!read.success) return null;
  const head = headOf(read.output.picture);
  const fits = head !== null && Math.max(head.widthPx, head.heightPx) <= MOST_SIDE_PX;
  return fits && read.output.trace.view === read.output.picture.view ? read.output : null;
}
