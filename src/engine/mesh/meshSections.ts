import { around } from '../mass/shapeBounds';
import type { LoftSection } from '../mass/shapes';
import type { Mesh } from '../mass/types';

/** How many cuts stand for a hull where sections are asked for. */
const cuts = 32;
/** The first and the last cut lie so far within the ends, as a share of the length. */
const within = 1e-3;
/** The area that a full round takes off a rectangle: 1 − π/4. */
const roundLoss = 1 - Math.PI / 4;

/**
 * A closed mesh cut across x into sections: for each the box around the cut and a roundness of like area. An estimate for
 * what asks only how wide and high a body is; volume, mass and room are the mesh's own. Own frame, mm; `centreYMm` is the
 * cut's own middle.
 */
export function meshSections(mesh: Mesh): LoftSection[] {
  const { minMm, maxMm } = around(mesh.verticesMm);
  const lengthMm = maxMm[0] - minMm[0];
  const sections: LoftSection[] = [];
  for (let k = 0; k <= cuts; k += 1) {
    const share = Math.min(1 - within, Math.max(within, k / cuts));
    const cut = cutAt(mesh, minMm[0] + share * lengthMm);
    const xMm = k === 0 ? minMm[0] : k === cuts ? maxMm[0] : minMm[0] + share * lengthMm;
    if (cut) sections.push({ xMm, ...cut });
  }
  return sections;
}

function cutAt({ verticesMm, triangles }: Mesh, xMm: number): Omit<LoftSection, 'xMm'> | null {
  let [y0, z0, y1, z1] = [Infinity, Infinity, -Infinity, -Infinity];
  let twice = 0;
  for (const triangle of triangles) {
    const ends: [number, number][] = [];
    let leaves = 0;
    for (let i = 0; i < 3; i += 1) {
      const [p, q] = [verticesMm[triangle[i]!]!, verticesMm[triangle[(i + 1) % 3]!]!];
      if (p[0] >= xMm === q[0] >= xMm) continue;
      const part = (xMm - p[0]) / (q[0] - p[0]);
      if (p[0] >= xMm) leaves = ends.length;
      ends.push([p[1] + part * (q[1] - p[1]), p[2] + part * (q[2] - p[2])]);
    }
    if (ends.length < 2) continue;
    const [from, to] = leaves === 0 ? [ends[1]!, ends[0]!] : [ends[0]!, ends[1]!];
    twice += from[0] * to[1] - from[1] * to[0];
    for (const [y, z] of ends) {
      y0 = Math.min(y0, y);
      z0 = Math.min(z0, z);
      y1 = Math.max(y1, y);
      z1 = Math.max(z1, z);
    }
  }
  if (y1 < y0) return null;
  const [widthMm, heightMm] = [y1 - y0, z1 - z0];
  const box = widthMm * heightMm;
  const lost = box > 0 ? 1 - Math.abs(twice) / 2 / box : 0;
  const roundness = Math.sqrt(Math.min(1, Math.max(0, lost / roundLoss)));
  return { widthMm, heightMm, centreYMm: (y0 + y1) / 2, centreZMm: (z0 + z1) / 2, roundness };
}
