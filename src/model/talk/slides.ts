import { freeIdAmong } from '../document/ids';
import { mostSlides } from '../document/schema/talk';
import type { Aircraft, Slide } from '../document/types';

const NONE: readonly Slide[] = [];

/** In their order; empty for an aircraft without a talk. */
export const slidesOf = ({ talk }: Aircraft): readonly Slide[] => talk ?? NONE;

export const slideById = (aircraft: Aircraft, id: string | null): Slide | null =>
  slidesOf(aircraft).find((slide) => slide.id === id) ?? null;

/** What of a slide is seen on the bench, and taken anew when it is replaced. */
export type Seen = Omit<Slide, 'id' | 'title' | 'note' | 'figures' | 'burn' | 'against'>;

/** Whether another slide would be more than a talk holds. */
export const isTalkFull = (aircraft: Aircraft): boolean => slidesOf(aircraft).length >= mostSlides;

/** The talk with a further slide, after a given one or at its end. */
export function addSlide(
  aircraft: Aircraft,
  slide: Omit<Slide, 'id'>,
  afterId: string | null = null,
): Aircraft {
  if (isTalkFull(aircraft)) return aircraft;
  const slides = slidesOf(aircraft);
  const id = freeIdAmong(new Set(slides.map((each) => each.id)), slide.title, 'slide');
  const at = slides.findIndex((each) => each.id === afterId);
  return { ...aircraft, talk: slides.toSpliced(at < 0 ? slides.length : at + 1, 0, { id, ...slide }) };
}

/** A slide with some of it otherwise; what is given as undefined is not said any more. */
export function updateSlide(aircraft: Aircraft, id: string, change: Loosely<Slide>): Aircraft {
  const next = slidesOf(aircraft).map((slide) => (slide.id === id ? said({ ...slide, ...change }) : slide));
  return slideById(aircraft, id) ? { ...aircraft, talk: next } : aircraft;
}

type Loosely<T> = { readonly [K in keyof T]?: T[K] | undefined };

const said = (slide: Loosely<Slide>): Slide =>
  Object.fromEntries(Object.entries(slide).filter(([, value]) => value !== undefined)) as Slide;

const SEEN = [
  'view',
  'eye',
  'fuel',
  'attitude',
  'positions',
  'layers',
  'looking',
  'hidden',
  'selectedId',
  'variantId',
] as const satisfies readonly (keyof Seen)[];

/** A slide that shows something else under its title. */
export function replaceSeen(aircraft: Aircraft, id: string, seen: Seen): Aircraft {
  const change = Object.fromEntries(SEEN.map((key) => [key, seen[key]]));
  return updateSlide(aircraft, id, change);
}

/** A slide so many places further on, or back. */
export function moveSlide(aircraft: Aircraft, id: string, by: number): Aircraft {
  const slides = slidesOf(aircraft);
  const from = slides.findIndex((slide) => slide.id === id);
  const slide = slides[from];
  const to = Math.min(slides.length - 1, Math.max(0, from + by));
  if (!slide || to === from) return aircraft;
  return { ...aircraft, talk: slides.toSpliced(from, 1).toSpliced(to, 0, slide) };
}

/** The last slide takes the talk with it. */
export function removeSlide(aircraft: Aircraft, id: string): Aircraft {
  if (!slideById(aircraft, id)) return aircraft;
  const left = slidesOf(aircraft).filter((slide) => slide.id !== id);
  if (left.length > 0) return { ...aircraft, talk: left };
  const { talk: _, ...rest } = aircraft;
  return rest;
}
