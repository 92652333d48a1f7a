import type { Corner } from '../../engine/geometry/polygon';
import type { CutOut } from '../airframe/cutOuts';

const marginMm = 12;
const rulerMm = 100;
const headMm = 16;

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

const mm = (value: number): string => String(Number(value.toFixed(3)));

/**
 * A 1:1 template of a cut-out as an SVG in millimetres, seen from outside the block's face: the outline to be
 * cut, the face's edge, the depth, and a ruler of 100 mm to check the print with.
 */
export function cutOutSvg(cutOut: CutOut): string {
  const { outlineMm, faceOutlineMm, depthMm, through } = cutOut;
  const all = [...outlineMm, ...faceOutlineMm];
  const [us, vs] = [all.map(([u]) => u), all.map(([, v]) => v)];
  const [u0, v1] = [Math.min(...us), Math.max(...vs)];
  const wide = Math.max(Math.max(...us) - u0, rulerMm) + 2 * marginMm;
  const high = v1 - Math.min(...vs) + 2 * marginMm + headMm + 14;
  const at = ([u, v]: Corner) => `${mm(u - u0 + marginMm)},${mm(v1 - v + marginMm + headMm)}`;
  const polygon = (corners: readonly Corner[]) => corners.map(at).join(' ');
  const rulerY = high - marginMm;
  const ticks = Array.from({ length: rulerMm / 10 + 1 }, (_, i) => {
    const x = mm(marginMm + 10 * i);
    return `<line x1="${x}" y1="${mm(rulerY)}" x2="${x}" y2="${mm(rulerY - (i % 5 === 0 ? 5 : 3))}"/>`;
  });
  const depth = through ? `right through, ${mm(depthMm)} mm` : `${depthMm.toFixed(1)} mm deep`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${mm(wide)}mm" height="${mm(high)}mm" viewBox="0 0 ${mm(wide)} ${mm(high)}">`,
    `<title>${escaped(`${cutOut.blockName}: cut-out for ${cutOut.partName}`)}</title>`,
    '<g fill="none" stroke="#000" stroke-width="0.25">',
    `<polygon id="face" stroke-dasharray="2 1.5" points="${polygon(faceOutlineMm)}"/>`,
    `<polygon id="cut" points="${polygon(outlineMm)}"/>`,
    `<g id="ruler"><line x1="${marginMm}" y1="${mm(rulerY)}" x2="${marginMm + rulerMm}" y2="${mm(rulerY)}"/>${ticks.join('')}</g>`,
    '</g>',
    '<g fill="#000" font-family="sans-serif" font-size="4">',
    `<text x="${marginMm}" y="10">${escaped(`${cutOut.blockName}: cut-out for ${cutOut.partName}`)}</text>`,
    `<text x="${marginMm}" y="16">${escaped(`${depth}. Print at 100 %; the ruler must measure ${rulerMm} mm.`)}</text>`,
    `<text x="${marginMm}" y="${mm(rulerY + 6)}">0</text><text x="${marginMm + rulerMm - 8}" y="${mm(rulerY + 6)}">${rulerMm} mm</text>`,
    '</g>',
    '</svg>',
    '',
  ].join('\n');
}
