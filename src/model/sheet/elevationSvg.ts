import type { Corner } from '../../engine/geometry/polygon';
import type { Vec3 } from '../../engine/geometry/types';
import type { BodyRole } from '../airframe/bodies';
import { shownText } from '../document/names';
import type { Aircraft } from '../document/types';
import { variantName } from '../document/variants';
import { boxAbout, type SheetView, seen, seenAirframe, seenItem } from './projection';

/** The printed width of an A4 sheet on its side, less 10 mm on each side (ISO 216). */
const WIDE_MM = 277;
const HEAD_MM = 8;
/** The radius of the CG’s mark, mm on paper. */
const DISC_MM = 2.2;

const names: Readonly<Record<SheetView, string>> = {
  side: 'side elevation, from the left',
  top: 'top view',
  front: 'front elevation',
};

const escaped = (text: string): string =>
  shownText(text).replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

const figure = (mm: number): string => String(Number(mm.toFixed(2)));

/** The aircraft seen square from a side as an SVG for print, filling the width of the sheet; its scale is written on it. */
export function elevationSvg(
  aircraft: Aircraft,
  view: SheetView,
  cgMm: Vec3 | null,
  colourOf: (role: BodyRole) => string,
): string {
  const airframe = seenAirframe(aircraft, view).map(({ corners }) => corners);
  const items = [...aircraft.tanks, ...aircraft.parts].map((item) => ({
    corners: seenItem(item, view),
    name: item.name,
    colour: colourOf('role' in item ? item.role : 'fuel'),
  }));
  const box = boxAbout([...airframe.flat(), ...items.flatMap(({ corners }) => corners)]);
  if (!box) return sheet(20, '', `${variantName(aircraft)}: nothing to draw`);
  const scale = WIDE_MM / Math.max(box.right - box.left, 1);
  const spot = ([a, b]: Corner) =>
    `${figure((a - box.left) * scale)},${figure(HEAD_MM + (box.high - b) * scale)}`;
  const shape = (corners: readonly Corner[], style: string, title = '') =>
    `<polygon points="${corners.map(spot).join(' ')}" ${style}>${title && `<title>${escaped(title)}</title>`}</polygon>`;
  const body = [
    ...airframe.map((corners) => shape(corners, 'fill="#fff" stroke="#000" stroke-width="0.35"')),
    ...items.map(({ corners, name, colour }) =>
      shape(corners, `fill="${colour}" fill-opacity="0.75" stroke="#000" stroke-width="0.18"`, name),
    ),
    cgMm ? disc(spot(seen(cgMm, view))) : '',
  ].join('\n');
  const highMm = HEAD_MM + (box.high - box.low) * scale + 1;
  return sheet(highMm, body, `${variantName(aircraft)}, ${names[view]}, scale 1 : ${figure(1 / scale)}`);
}

/** The quartered disc that marks a CG on engineering drawings. */
function disc(at: string): string {
  const r = DISC_MM;
  return `<g transform="translate(${at})"><circle r="${r}" fill="#fff"/><path d="M0 0V${-r}A${r} ${r} 0 0 1 ${r} 0ZM0 0V${r}A${r} ${r} 0 0 1 ${-r} 0Z"/><circle r="${r}" fill="none" stroke="#000" stroke-width="0.35"/></g>`;
}

const sheet = (highMm: number, body: string, title: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDE_MM}mm" height="${figure(highMm)}mm" viewBox="-1 0 ${WIDE_MM + 2} ${figure(highMm)}" stroke-linejoin="round">
<rect x="-1" width="${WIDE_MM + 2}" height="${figure(highMm)}" fill="#fff"/>
<text y="4" font-family="sans-serif" font-size="3.5">${escaped(title)}</text>
${body}
</svg>
`;
