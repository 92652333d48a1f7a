import type { Corner } from '../../engine/geometry/polygon';
import type { CutOut } from '../airframe/cutOuts';

const marginMm = 12;
const rulerMm = 100;
const headMm = 16;

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

const mm = (value: number): string => String(Number(value.toFixed(3)));

/** A 1:1 template laid out on its own sheet, mm from the left and from the top. */
export interface CutOutPlan {
  readonly wideMm: number;
  readonly highMm: number;
  readonly faceMm: readonly Corner[];
  readonly cutMm: readonly Corner[];
  readonly title: string;
  /** "12.0 mm deep", "right through, 20 mm". */
  readonly depth: string;
}

/** Lays out the template of a cut-out, seen from outside the block's face, with room for a head and for the ruler. */
export function cutOutPlan({ outlineMm, faceOutlineMm, ...cutOut }: CutOut): CutOutPlan {
  const { depthMm, through, blockName, partName } = cutOut;
  const all = [...outlineMm, ...faceOutlineMm];
  const [us, vs] = [all.map(([u]) => u), all.map(([, v]) => v)];
  const [u0, v1] = [Math.min(...us), Math.max(...vs)];
  const at = ([u, v]: Corner): Corner => [u - u0 + marginMm, v1 - v + marginMm + headMm];
  return {
    wideMm: Math.max(Math.max(...us) - u0, rulerMm) + 2 * marginMm,
    highMm: v1 - Math.min(...vs) + 2 * marginMm + headMm + 14,
    faceMm: faceOutlineMm.map(at),
    cutMm: outlineMm.map(at),
    title: `${blockName}: cut-out for ${partName}`,
    depth: through ? `right through, ${mm(depthMm)} mm` : `${depthMm.toFixed(1)} mm deep`,
  };
}

/**
 * A 1:1 template of a cut-out as an SVG in millimetres, seen from outside the block's face: the outline to be
 * cut, the face's edge, the depth, and a ruler of 100 mm to check the print with.
 */
export function cutOutSvg(cutOut: CutOut): string {
  const { wideMm: wide, highMm: high, faceMm, cutMm, title, depth } = cutOutPlan(cutOut);
  const polygon = (corners: readonly Corner[]) => corners.map(([x, y]) => `${mm(x)},${mm(y)}`).join(' ');
  const rulerY = high - marginMm;
  const ticks = Array.from({ length: rulerMm / 10 + 1 }, (_, i) => {
    const x = mm(marginMm + 10 * i);
    return `<line x1="${x}" y1="${mm(rulerY)}" x2="${x}" y2="${mm(rulerY - (i % 5 === 0 ? 5 : 3))}"/>`;
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${mm(wide)}mm" height="${mm(high)}mm" viewBox="0 0 ${mm(wide)} ${mm(high)}">`,
    `<title>${escaped(title)}</title>`,
    '<g fill="none" stroke="#000" stroke-width="0.25">',
    `<polygon id="face" stroke-dasharray="2 1.5" points="${polygon(faceMm)}"/>`,
    `<polygon id="cut" points="${polygon(cutMm)}"/>`,
    `<g id="ruler"><line x1="${marginMm}" y1="${mm(rulerY)}" x2="${marginMm + rulerMm}" y2="${mm(rulerY)}"/>${ticks.join('')}</g>`,
    '</g>',
    '<g fill="#000" font-family="sans-serif" font-size="4">',
    `<text x="${marginMm}" y="10">${escaped(title)}</text>`,
    `<text x="${marginMm}" y="16">${escaped(`${depth}. Print at 100 %; the ruler must measure ${rulerMm} mm.`)}</text>`,
    `<text x="${marginMm}" y="${mm(rulerY + 6)}">0</text><text x="${marginMm + rulerMm - 8}" y="${mm(rulerY + 6)}">${rulerMm} mm</text>`,
    '</g>',
    '</svg>',
    '',
  ].join('\n');
}
