import { CanvasTexture, LinearMipmapLinearFilter } from 'three';

const SIZE = 128;

/** The quartered disc: two quarters of ink, two of paper, a ring of ink and a rim of paper round it. */
export function cgDiscTexture(ink: string, paper: string): CanvasTexture {
  const canvas = document.createElement('canvas');
  canvas.width = SIZE;
  canvas.height = SIZE;
  const pen = canvas.getContext('2d');
  if (pen) {
    const middle = SIZE / 2;
    const disc = (radius: number, from: number, to: number, fill: string) => {
      pen.fillStyle = fill;
      pen.beginPath();
      pen.moveTo(middle, middle);
      pen.arc(middle, middle, radius, from, to);
      pen.fill();
    };
    const quarter = Math.PI / 2;
    disc(61, 0, 4 * quarter, paper);
    disc(54, 0, 4 * quarter, ink);
    disc(45, 0, 4 * quarter, paper);
    disc(45, -quarter, 0, ink);
    disc(45, quarter, 2 * quarter, ink);
  }
  const texture = new CanvasTexture(canvas);
  texture.minFilter = LinearMipmapLinearFilter;
  texture.anisotropy = 4;
  return texture;
}
