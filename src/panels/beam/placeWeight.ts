import { setAttribute } from '../drawing';
import { type Drawn, isHung } from './drawnWeights';

/** A hatched square is drawn at its true size, so that the hatch of all is alike. */
function placeSquare(square: SVGRectElement, sizePx: number, footPx: number): void {
  setAttribute(square, 'x', String(-sizePx / 2));
  setAttribute(square, 'y', String(footPx - sizePx));
  setAttribute(square, 'width', String(sizePx));
  setAttribute(square, 'height', String(sizePx));
}

/** The lower edge of a weight, px below the beam. */
export const footOf = (drawn: Drawn) => (isHung(drawn) ? drawn.offPx + drawn.sizePx : -drawn.offPx);

export const isPlacedAlike = (a: Drawn, b: Drawn) =>
  a.xPx === b.xPx && a.offPx === b.offPx && a.sizePx === b.sizePx && isHung(a) === isHung(b);

/** Its stem, its shape and the sign that it does not fit. */
export function placeWeight(element: SVGGElement, drawn: Drawn, beamPx: number): void {
  const { xPx, offPx, sizePx } = drawn;
  const hung = isHung(drawn);
  const footPx = footOf(drawn);
  setAttribute(element, 'transform', `translate(${xPx} ${hung ? beamPx + 4 : beamPx})`);
  const [stem, shape, sign] = element.children;
  setAttribute(stem, 'y2', String(hung ? offPx : -offPx));
  if (shape instanceof SVGRectElement) placeSquare(shape, sizePx, footPx);
  else setAttribute(shape, 'transform', `translate(0 ${footPx}) scale(${sizePx})`);
  setAttribute(sign, 'transform', `translate(0 ${hung ? footPx + 3 : footPx - sizePx - 3})`);
}
