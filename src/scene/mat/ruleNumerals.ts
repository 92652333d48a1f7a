import { BufferAttribute, BufferGeometry, CanvasTexture, LinearMipmapLinearFilter } from 'three';

/** Figures printed on the mat: each with the place of its top middle in the drawing plane, mm. */
export interface Numeral {
  readonly text: string;
  readonly at: readonly [u: number, v: number];
}

const CELL_PX = [160, 64] as const;
const COLUMNS = 6;

/** All the figures in one texture, white, to be tinted. */
export function numeralTexture(numerals: readonly Numeral[], font: string): CanvasTexture {
  const rows = Math.max(1, Math.ceil(numerals.length / COLUMNS));
  const canvas = document.createElement('canvas');
  canvas.width = CELL_PX[0] * COLUMNS;
  canvas.height = CELL_PX[1] * rows;
  const pen = canvas.getContext('2d');
  if (pen) {
    pen.fillStyle = '#ffffff';
    pen.font = `600 ${Math.round(CELL_PX[1] * 0.8)}px ${font}`;
    pen.textAlign = 'center';
    pen.textBaseline = 'middle';
    numerals.forEach(({ text }, i) => {
      const x = (i % COLUMNS) * CELL_PX[0] + CELL_PX[0] / 2;
      pen.fillText(text, x, Math.floor(i / COLUMNS) * CELL_PX[1] + CELL_PX[1] / 2, CELL_PX[0] - 8);
    });
  }
  const texture = new CanvasTexture(canvas);
  texture.anisotropy = 8;
  texture.minFilter = LinearMipmapLinearFilter;
  return texture;
}

/** A quad for each figure, hung by its top middle; a cell's height in mm, the figures about two thirds of it. */
export function numeralGeometry(numerals: readonly Numeral[], cellMm: number): BufferGeometry {
  const rows = Math.max(1, Math.ceil(numerals.length / COLUMNS));
  const wide = (cellMm * CELL_PX[0]) / CELL_PX[1];
  const places: number[] = [];
  const cells: number[] = [];
  const corners: number[] = [];
  numerals.forEach(({ at: [u, v] }, i) => {
    const left = (i % COLUMNS) / COLUMNS;
    const top = 1 - Math.floor(i / COLUMNS) / rows;
    places.push(
      u - wide / 2,
      v,
      0,
      u + wide / 2,
      v,
      0,
      u + wide / 2,
      v - cellMm,
      0,
      u - wide / 2,
      v - cellMm,
      0,
    );
    cells.push(left, top, left + 1 / COLUMNS, top, left + 1 / COLUMNS, top - 1 / rows, left, top - 1 / rows);
    corners.push(4 * i, 4 * i + 2, 4 * i + 1, 4 * i, 4 * i + 3, 4 * i + 2);
  });
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(places), 3));
  geometry.setAttribute('uv', new BufferAttribute(new Float32Array(cells), 2));
  geometry.setIndex(corners);
  return geometry;
}
