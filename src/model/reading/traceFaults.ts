import { headOf, MOST_SIDE_PX } from '../document/traces';
import type { TraceImage } from '../document/types';
import type { Checked } from './checked';
import type { Fault } from './fault';

const LISTS = ['traces', 'traceImages'] as const;
const OTHER = { traces: 'traceImages', traceImages: 'traces' } as const;
const WHAT = { traces: 'place of a drawing', traceImages: 'image' } as const;

/** What the schema cannot see in the drawings: two under one elevation, one half without the other, an image that is none. */
export function traceFaults(checked: Checked): readonly Fault[] {
  const { aircraft, sound, tell } = checked;
  return LISTS.flatMap((key) => {
    const list = aircraft[key];
    if (!Array.isArray(list)) return [];
    return (list as readonly { readonly view: string }[]).flatMap((entry, index) => {
      if (!sound(key, index)) return [];
      const { view } = entry;
      const at = [key, index, 'view'];
      if (list.findIndex((each) => each?.view === view) < index)
        return [tell(at, `there is already one for the ${view} view.`, 'one for each view', `"${view}"`)];
      const others = aircraft[OTHER[key]] as readonly { readonly view: string }[] | undefined;
      if (!Array.isArray(others) || !others.some((each) => each?.view === view)) {
        const missing = `the ${view} view has no ${WHAT[OTHER[key]]} in ${OTHER[key]}.`;
        return [tell(at, missing, `one for "${view}" in ${OTHER[key]}`, 'none')];
      }
      return key === 'traceImages' ? imageFaults(entry as TraceImage, index, checked) : [];
    });
  });
}

function imageFaults(entry: TraceImage, index: number, { tell }: Checked): readonly Fault[] {
  const at = ['traceImages', index, 'image'];
  const head = headOf(entry);
  const said = /^data:image\/(\w+)/.exec(entry.image)?.[1] ?? '';
  if (head?.kind !== said) {
    const came = head ? `a ${head.kind} image` : 'bytes that are no image';
    return [tell(at, `expected a ${said} image, got ${came}.`, `a ${said} image`, came)];
  }
  const { widthPx, heightPx } = head;
  if (Math.max(widthPx, heightPx) <= MOST_SIDE_PX) return [];
  const [most, came] = [`at most ${MOST_SIDE_PX} px to a side`, `${widthPx} × ${heightPx} px`];
  return [tell(at, `the image is too large to be shown: expected ${most}, got ${came}.`, most, came)];
}
