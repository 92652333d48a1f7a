import { polygonArea, polygonCrossesItself } from '../geometry/polygon';
import { perObject } from '../memory/memory';
import { meshFault } from './meshFault';
import type { LoftSection, LoftShape, PanelShape, PrismShape, Shape } from './shapes';
import { loftVolume } from './solids/loft';

type Sizes = Readonly<Record<string, number>>;

/** What makes a shape no solid, as a sentence for the person who typed it; null when it is one. */
export const shapeFault: (shape: Shape) => string | null = perObject(findFault);

function findFault(shape: Shape): string | null {
  switch (shape.kind) {
    case 'box':
    case 'ellipsoid':
      return positive(shape.kind, {
        length: shape.lengthMm,
        width: shape.widthMm,
        height: shape.heightMm,
      });
    case 'taperedBox':
      return (
        positive('tapered box', { length: shape.lengthMm }) ??
        notNegative('tapered box', {
          'front width': shape.frontWidthMm,
          'front height': shape.frontHeightMm,
          'rear width': shape.rearWidthMm,
          'rear height': shape.rearHeightMm,
        }) ??
        bothZero('tapered box', 'width', shape.frontWidthMm, shape.rearWidthMm) ??
        bothZero('tapered box', 'height', shape.frontHeightMm, shape.rearHeightMm)
      );
    case 'cylinder':
      return positive('cylinder', { length: shape.lengthMm, diameter: shape.diameterMm });
    case 'tube':
      return (
        positive('tube', { length: shape.lengthMm, 'outer diameter': shape.outerDiameterMm }) ??
        notNegative('tube', { bore: shape.innerDiameterMm }) ??
        (shape.innerDiameterMm >= shape.outerDiameterMm
          ? `The tube's bore, ${shape.innerDiameterMm} mm, must be less than its outer diameter, ${shape.outerDiameterMm} mm.`
          : null)
      );
    case 'frustum':
      return (
        positive('cone', { length: shape.lengthMm }) ??
        notNegative('cone', {
          'front diameter': shape.frontDiameterMm,
          'rear diameter': shape.rearDiameterMm,
        }) ??
        bothZero('cone', 'diameter', shape.frontDiameterMm, shape.rearDiameterMm)
      );
    case 'sphere':
      return positive('sphere', { diameter: shape.diameterMm });
    case 'capsule':
      return (
        positive('capsule', { length: shape.lengthMm, diameter: shape.diameterMm }) ??
        (shape.lengthMm < shape.diameterMm
          ? `The capsule's length, ${shape.lengthMm} mm, must be at least its diameter, ${shape.diameterMm} mm.`
          : null)
      );
    case 'prism':
      return prismFault(shape);
    case 'loft':
      return loftFault(shape);
    case 'panel':
      return panelFault(shape);
    case 'mesh':
      return meshFault(shape);
  }
}

function positive(noun: string, sizes: Sizes): string | null {
  const bad = Object.entries(sizes).find(([, size]) => !(size > 0 && Number.isFinite(size)));
  return bad ? `The ${noun}'s ${bad[0]} must be more than 0 mm; it is ${bad[1]}.` : null;
}

function notNegative(noun: string, sizes: Sizes, unit = ' mm'): string | null {
  const bad = Object.entries(sizes).find(([, size]) => !(size >= 0 && Number.isFinite(size)));
  return bad ? `The ${noun}'s ${bad[0]} must be 0${unit} or more; it is ${bad[1]}.` : null;
}

function finite(noun: string, sizes: Sizes): string | null {
  const bad = Object.entries(sizes).find(([, size]) => !Number.isFinite(size));
  return bad ? `The ${noun}'s ${bad[0]} must be a number; it is ${bad[1]}.` : null;
}

const bothZero = (noun: string, what: string, front: number, rear: number): string | null =>
  front === 0 && rear === 0 ? `The ${noun}'s front and rear ${what} cannot both be 0.` : null;

function prismFault({ lengthMm, outlineMm }: PrismShape): string | null {
  const length = positive('prism', { length: lengthMm });
  if (length) return length;
  if (outlineMm.length < 3)
    return `The prism's outline needs at least 3 corners; it has ${outlineMm.length}.`;
  const odd = outlineMm.findIndex((corner) => corner.length !== 2 || !corner.every(Number.isFinite));
  if (odd >= 0)
    return `Corner ${odd + 1} of the prism's outline must be two numbers; it is ${outlineMm[odd]}.`;
  if (polygonCrossesItself(outlineMm)) return "The prism's outline crosses or touches itself.";
  return polygonArea(outlineMm) === 0 ? "The prism's outline encloses no area." : null;
}

function loftFault(shape: LoftShape): string | null {
  const { sections } = shape;
  if (sections.length < 2) return `A loft needs at least 2 sections; this one has ${sections.length}.`;
  for (const [i, section] of sections.entries()) {
    const fault = sectionFault(`section ${i + 1}`, section);
    if (fault) return fault;
    const before = sections[i - 1];
    if (before && section.xMm <= before.xMm) {
      return `Section ${i + 1} must be aft of section ${i}, at more than ${before.xMm} mm; it is at ${section.xMm} mm.`;
    }
  }
  return loftVolume(shape).volumeMm3 > 0 ? null : 'The loft encloses no volume.';
}

function sectionFault(noun: string, section: LoftSection): string | null {
  const { xMm, centreYMm, centreZMm, roundness } = section;
  return (
    finite(`loft's ${noun}`, { station: xMm, 'centre y': centreYMm, 'centre z': centreZMm }) ??
    notNegative(`loft's ${noun}`, { width: section.widthMm, height: section.heightMm }) ??
    (roundness >= 0 && roundness <= 1
      ? null
      : `The loft's ${noun} must have a roundness from 0 to 1; it is ${roundness}.`)
  );
}

function panelFault(shape: PanelShape): string | null {
  const { rootChordMm, tipChordMm, rootThickness, tipThickness } = shape;
  return (
    positive('panel', { span: shape.spanMm }) ??
    notNegative('panel', { 'root chord': rootChordMm, 'tip chord': tipChordMm }) ??
    bothZeroPanel('chord', rootChordMm, tipChordMm) ??
    finite('panel', {
      sweep: shape.sweepMm,
      rise: shape.riseMm,
      'root twist': shape.rootTwistDeg,
      'tip twist': shape.tipTwistDeg,
    }) ??
    twistFault(shape.rootTwistDeg, shape.tipTwistDeg) ??
    notNegative('panel', { 'root thickness': rootThickness, 'tip thickness': tipThickness }, '') ??
    (rootChordMm * rootThickness + tipChordMm * tipThickness > 0 ? null : 'The panel encloses no volume.')
  );
}

const bothZeroPanel = (what: string, root: number, tip: number): string | null =>
  root === 0 && tip === 0 ? `The panel's root and tip ${what} cannot both be 0.` : null;

/** Joined by straight lines, sections turned a quarter turn apart or more pinch the panel between them. */
const twistFault = (root: number, tip: number): string | null =>
  Math.abs(root - tip) < 90
    ? null
    : `The panel's root and tip twist must differ by less than 90°; they differ by ${Math.abs(root - tip)}°.`;
