import type { Vec3 } from '../geometry/types';
import { gaussRule } from '../mass/gauss';
import { type Moments, noMoments, volumeFromMoments } from '../mass/moments';
import { roundedArea } from '../mass/roundedRectangle';
import type { VolumeProperties } from '../mass/types';
import { cutArea } from './cutArea';
import { roundedCut } from './roundedCut';
import { discCut, emptySection, type SectionMoments, sectionReach, wholeSection } from './sectionCut';
import { emptySectionPlace, type Section, type StackPiece } from './stackPieces';
import type { TiltedVessel, Vessel, WetCut } from './vessel';

/** A lean of down from the x axis too small to matter, as the sine of the angle. */
const UPRIGHT = 1e-12;

/**
 * A vessel made of sections stacked along x (cylinder, cone frustum, capsule, loft).
 *
 * Each section is cut by the waterline in closed form, and the cuts are integrated along x by Gauss–Legendre quadrature
 * between the places where the waterline enters or leaves the section. There the cut grows like a half power; taking
 * u = middle − half · cos θ makes it smooth in θ.
 */
export function stackVessel(pieces: readonly StackPiece[], full: VolumeProperties): Vessel {
  return { full, tilt: (down) => tiltedStack(pieces, down) };
}

function tiltedStack(pieces: readonly StackPiece[], down: Vec3): TiltedVessel {
  const reaches = pieces.map((piece) => piece.reach(down));
  return {
    topMm: Math.min(...reaches.map(([least]) => least)),
    bottomMm: Math.max(...reaches.map(([, greatest]) => greatest)),
    cut: (offset) => stackCut(pieces, down, offset),
    wetted: (offset) => stackWetted(pieces, down, offset),
  };
}

/** A stretch of a piece whose sections are all cut, or all wholly wet. */
interface WetStretch {
  readonly piece: StackPiece;
  readonly from: number;
  readonly to: number;
  readonly whole: boolean;
}

function wetStretches(pieces: readonly StackPiece[], down: Vec3, offset: number): WetStretch[] {
  const stretches: WetStretch[] = [];
  const section = emptySectionPlace();
  const line = noLine();
  for (const piece of pieces) {
    const marks = isUpright(down) ? [piece.atStation(offset / down[0])] : piece.breaks(down, offset);
    const ends = marks.filter((u) => u > piece.fromU && u < piece.toU).sort((a, b) => a - b);
    ends.push(piece.toU);
    let from = piece.fromU;
    for (const to of ends) {
      if (!(to > from)) continue;
      piece.section((from + to) / 2, section);
      setLine(line, section, down, offset);
      const reach = sectionReach(section.roundness, line.ny, line.nz);
      if (line.delta < reach) stretches.push({ piece, from, to, whole: line.delta <= -reach });
      from = to;
    }
  }
  return stretches;
}

function stackCut(pieces: readonly StackPiece[], down: Vec3, offset: number): WetCut {
  const section = emptySectionPlace();
  const wet = emptySection();
  const line = noLine();
  let volume = 0;
  let surface = isUpright(down) ? sectionAt(pieces, offset / down[0]) : 0;
  for (const { piece, from, to, whole } of wetStretches(pieces, down, offset)) {
    for (const { at, weight } of whole ? gaussRule(piece.wholePoints) : CUT_RULE) {
      piece.section(from + at * (to - from), section);
      const size = weight * (to - from) * section.xPerU * section.halfY * section.halfZ;
      if (whole) {
        volume += size * roundedArea(section.roundness);
        continue;
      }
      setLine(line, section, down, offset);
      cutArea(section.roundness, line.ny, line.nz, line.delta, wet);
      volume += size * wet.area;
      surface += size * wet.chord * line.perMm;
    }
  }
  return { volumeMm3: volume, surfaceAreaMm2: surface };
}

function stackWetted(pieces: readonly StackPiece[], down: Vec3, offset: number): VolumeProperties {
  const stretches = wetStretches(pieces, down, offset);
  const section = emptySectionPlace();
  const wet = emptySection();
  const line = noLine();
  const sums = noMoments();
  const middle = stretches[stretches.length >> 1];
  middle?.piece.section((middle.from + middle.to) / 2, section);
  const about: Vec3 = [section.xMm, section.centreY, section.centreZ];
  for (const { piece, from, to, whole } of stretches) {
    for (const { at, weight } of whole ? gaussRule(piece.wholePoints) : CUT_RULE) {
      piece.section(from + at * (to - from), section);
      setLine(line, section, down, offset);
      if (whole) wholeSection(section.roundness, wet);
      else if (section.roundness === 1) discCut(line.ny, line.nz, line.delta, wet);
      else roundedCut(section.roundness, line.ny, line.nz, line.delta, wet);
      addSection(sums, weight * (to - from) * section.xPerU, section, wet, about);
    }
  }
  return volumeFromMoments(sums, about);
}

/** Places and weights on 0…1 for cut stretches: Gauss points in θ, with the sine that du = half · sin θ dθ brings in. */
const CUT_RULE = gaussRule(20).map(({ at, weight }) => ({
  at: (1 - Math.cos(Math.PI * at)) / 2,
  weight: (Math.PI / 2) * weight * Math.sin(Math.PI * at),
}));

/** The waterline in a unit section: n · p = delta, n a unit vector, wet where n · p ≥ delta; perMm is d(delta)/d(offset). */
interface Waterline {
  ny: number;
  nz: number;
  delta: number;
  perMm: number;
}

const noLine = (): Waterline => ({ ny: 0, nz: 1, delta: 0, perMm: 0 });

function setLine(line: Waterline, s: Section, down: Vec3, offset: number): void {
  const y = down[1] * s.halfY;
  const z = down[2] * s.halfZ;
  const size = Math.sqrt(y * y + z * z);
  const eta = offset - down[0] * s.xMm - down[1] * s.centreY - down[2] * s.centreZ;
  if (size === 0) {
    line.ny = 0;
    line.nz = 1;
    line.delta = eta > 0 ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
    line.perMm = 0;
    return;
  }
  line.ny = y / size;
  line.nz = z / size;
  line.delta = eta / size;
  line.perMm = 1 / size;
}

const isUpright = (down: Vec3): boolean => Math.abs(down[1]) + Math.abs(down[2]) < UPRIGHT;

/** Area of the section at a station, mm². */
function sectionAt(pieces: readonly StackPiece[], xMm: number): number {
  const section = emptySectionPlace();
  for (const piece of pieces) {
    const u = piece.atStation(xMm);
    if (!(u >= piece.fromU && u <= piece.toU)) continue;
    piece.section(u, section);
    return section.halfY * section.halfZ * roundedArea(section.roundness);
  }
  return 0;
}

/** Adds a section of thickness `weight` mm to moments about a point. */
function addSection(m: Moments, weight: number, s: Section, wet: SectionMoments, about: Vec3): void {
  const stretch = weight * s.halfY * s.halfZ;
  const ox = s.xMm - about[0];
  const oy = s.centreY - about[1];
  const oz = s.centreZ - about[2];
  const area = stretch * wet.area;
  const y = stretch * s.halfY * wet.y;
  const z = stretch * s.halfZ * wet.z;
  const momentY = oy * area + y;
  const momentZ = oz * area + z;
  m.m += area;
  m.x += ox * area;
  m.y += momentY;
  m.z += momentZ;
  m.xx += ox * ox * area;
  m.xy += ox * momentY;
  m.xz += ox * momentZ;
  m.yy += oy * oy * area + 2 * oy * y + stretch * s.halfY * s.halfY * wet.yy;
  m.zz += oz * oz * area + 2 * oz * z + stretch * s.halfZ * s.halfZ * wet.zz;
  m.yz += oy * oz * area + oy * z + oz * y + stretch * s.halfY * s.halfZ * wet.yz;
}
