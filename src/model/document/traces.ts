import { perObject, perObjects } from '../../engine/memory/memory';
import { type ImageHead, imageHead } from './imageHead';
import type { Aircraft, Trace, TraceImage } from './types';

/** A drawing under an elevation: its image, and where it lies. */
export interface Laid {
  readonly trace: Trace;
  readonly picture: TraceImage;
}

/** The longest side of an image that is laid under the aircraft, px; what is larger was not reduced by this bench. */
export const MOST_SIDE_PX = 4096;

/** What an image's own bytes say of it; null where they are none of a PNG, JPEG or WebP. */
export const headOf = perObject(({ image }: TraceImage): ImageHead | null => imageHead(bytesOf(image)));

/** The bytes behind a data: address, none where it holds no base64. */
export function bytesOf(image: string): Uint8Array {
  try {
    return Uint8Array.from(atob(image.slice(image.indexOf(',') + 1)), (letter) => letter.charCodeAt(0));
  } catch {
    return new Uint8Array();
  }
}

/** What the file grows by for an image, kB of 1000 bytes. */
export const kiloBytesOf = ({ image }: TraceImage): number => Math.ceil(image.length / 1000);

/** What the file holds under an elevation. */
export const laidIn = perObjects((aircraft: Aircraft, view: Trace['view']): Laid | null => {
  const trace = aircraft.traces?.find((each) => each.view === view);
  const picture = aircraft.traceImages?.find((each) => each.view === view);
  return trace && picture ? { trace, picture } : null;
});

const put = <T extends { readonly view: Trace['view'] }>(list: readonly T[] | undefined, entry: T) =>
  list?.some(({ view }) => view === entry.view)
    ? list.map((each) => (each.view === entry.view ? entry : each))
    : [...(list ?? []), entry];

/** The aircraft with a drawing in its file, in place of any other under that elevation. */
export function withLaid(aircraft: Aircraft, { trace, picture }: Laid): Aircraft {
  const same = laidIn(aircraft, trace.view)?.picture === picture;
  return {
    ...aircraft,
    traces: put(aircraft.traces, trace),
    traceImages: same ? aircraft.traceImages : put(aircraft.traceImages, picture),
  };
}

/** The aircraft without what lies under an elevation. */
export function withoutLaid(aircraft: Aircraft, view: Trace['view']): Aircraft {
  if (!laidIn(aircraft, view)) return aircraft;
  const { traces, traceImages, ...rest } = aircraft;
  const left = traces?.filter((each) => each.view !== view) ?? [];
  const images = traceImages?.filter((each) => each.view !== view) ?? [];
  return left.length > 0 ? { ...aircraft, traces: left, traceImages: images } : rest;
}

/** The aircraft without any drawing, for where there is no room for images. */
export function withoutDrawings(aircraft: Aircraft): Aircraft {
  if (!aircraft.traces && !aircraft.traceImages) return aircraft;
  const { traces: _, traceImages: __, ...rest } = aircraft;
  return rest;
}
