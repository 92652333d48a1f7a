import { imageHead } from '../model/document/imageHead';
import { longestImage } from '../model/document/schema/traces';
import type { Bench } from '../store/bench';

/** The largest file that is read, bytes, and the most pixels that are unpacked: those of the largest cameras. */
const LARGEST_FILE = 64 * 1024 * 1024;
const MOST_PIXELS = 120e6;

/** The longest side that is kept, px, then what is tried until the image is small enough for the file. */
const SIDES = [1600, 1200, 900, 600] as const;
const QUALITIES = [0.86, 0.72, 0.55] as const;

/** Lays a picture under the elevation shown, reduced; in the free view under the side. Throws a sentence where it is none. */
export async function openPicture(bench: Bench, file: File): Promise<void> {
  const mb = (bytes: number) => Math.ceil(bytes / 1024 / 1024);
  if (file.size > LARGEST_FILE)
    throw new Error(
      `${file.name} is too large: expected at most ${mb(LARGEST_FILE)} MB, got ${mb(file.size)} MB`,
    );
  const bytes = new Uint8Array(await file.arrayBuffer());
  const head = imageHead(bytes);
  if (!head) throw new Error(noPicture(file.name, bytes));
  const { kind, widthPx, heightPx } = head;
  if (widthPx * heightPx > MOST_PIXELS)
    throw new Error(
      `${file.name} is too large: expected at most ${MOST_PIXELS / 1e6} million pixels, got ${widthPx} × ${heightPx}`,
    );
  const { trace } = bench;
  trace.setOpen(true);
  if (trace.shown()?.trace.locked) throw new Error(HELD);
  const image = await reduced(new Blob([bytes], { type: `image/${kind}` }), file.name);
  trace.lay(image);
}

const HELD = 'the drawing that lies there is held: let go of it first';

function noPicture(name: string, bytes: Uint8Array): string {
  const start = new TextDecoder().decode(bytes.subarray(0, 2000));
  if (/<svg[\s>]/i.test(start) || name.toLowerCase().endsWith('.svg'))
    return `${name} is an SVG drawing, which can carry scripts and is not taken: export it as PNG`;
  return `${name} holds no picture of a kind that is taken: expected PNG, JPEG or WebP`;
}

/** The picture on white, no larger than asked, as a data: address that is short enough for the file. */
async function reduced(blob: Blob, name: string): Promise<string> {
  const picture = await createImageBitmap(blob).catch(() => {
    throw new Error(`${name} is damaged: the browser cannot unpack it`);
  });
  try {
    for (const side of SIDES) {
      const share = Math.min(1, side / Math.max(picture.width, picture.height));
      const canvas = document.createElement('canvas');
      canvas.width = Math.max(1, Math.round(picture.width * share));
      canvas.height = Math.max(1, Math.round(picture.height * share));
      const paper = canvas.getContext('2d');
      if (!paper) throw new Error('the browser gives no canvas to reduce it on');
      paper.fillStyle = '#fff';
      paper.fillRect(0, 0, canvas.width, canvas.height);
      paper.imageSmoothingQuality = 'high';
      paper.drawImage(picture, 0, 0, canvas.width, canvas.height);
      for (const quality of QUALITIES) {
        const image = packed(canvas, quality);
        if (image.length <= longestImage) return image;
      }
    }
  } finally {
    picture.close();
  }
  throw new Error(`${name} could not be made small enough`);
}

/** As WebP, or as JPEG in a browser that writes none. */
function packed(canvas: HTMLCanvasElement, quality: number): string {
  const webp = canvas.toDataURL('image/webp', quality);
  return webp.startsWith('data:image/webp') ? webp : canvas.toDataURL('image/jpeg', quality);
}
