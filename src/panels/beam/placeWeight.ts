import type { BodyRole } from '../../model/airframe/bodies';
import { setAttribute } from '../drawing';
import { roleLooks } from '../roleLooks';
import { type Drawn, isHung } from './drawnWeights';
import { type OutlineAt, outlineOf } from './outlineOf';

/** A small warning sign that touches its weight, from above or from below. */
const fitSigns = { above: outlineOf('M0 -10L6 0H-6ZM0 -7V-3'), below: outlineOf('M0 0L6 10H-6ZM0 3V7') };

const outlines = Object.fromEntries(
  Object.entries(roleLooks).map(([role, { path }]) => [role, outlineOf(path)]),
) as Readonly<Record<BodyRole, OutlineAt>>;

/** A hatched square is drawn as one, so that the hatch of all is alike. */
function placeSquare(square: SVGRectElement, { xPx, sizePx }: Drawn, footPx: number): void {
  setAttribute(square, 'x', String(xPx - sizePx / 2));
  setAttribute(square, 'y', String(footPx - sizePx));
  setAttribute(square, 'width', String(sizePx));
  setAttribute(square, 'height', String(sizePx));
}

/** The lower edge of a weight, px below the beam. */
export const footOf = (drawn: Drawn) => (isHung(drawn) ? drawn.offPx + drawn.sizePx : -drawn.offPx);

export const isPlacedAlike = (a: Drawn, b: Drawn) =>
  a.xPx === b.xPx && a.offPx === b.offPx && a.sizePx === b.sizePx && isHung(a) === isHung(b);

/** Its stem, its shape and the sign that it does not fit, each where it stands in the picture. */
export function placeWeight(element: SVGGElement, drawn: Drawn, beamPx: number): void {
  const { weight, xPx, offPx, sizePx } = drawn;
  const hung = isHung(drawn);
  const fromPx = hung ? beamPx + 4 : beamPx;
  const footPx = fromPx + footOf(drawn);
  const [stem, shape, sign] = element.children;
  setAttribute(stem, 'd', `M${xPx} ${fromPx}V${hung ? fromPx + offPx : fromPx - offPx}`);
  if (shape instanceof SVGRectElement) placeSquare(shape, drawn, footPx);
  else setAttribute(shape, 'd', outlines[weight.role](xPx, footPx, sizePx));
  const signPx = hung ? footPx + 3 : footPx - sizePx - 3;
  setAttribute(sign, 'd', (hung ? fitSigns.below : fitSigns.above)(xPx, signPx, 1));
}
