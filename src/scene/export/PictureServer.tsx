import { type RootState, useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import { Vector2 } from 'three';
import { useBench } from '../../store/react';
import { usePalette } from '../materials/palette';

/** No side of a picture is longer, px: what every WebGL 2 has room for (WebGL 2, MAX_RENDERBUFFER_SIZE of 2048), doubled. */
const MOST_PX = 4096;

/** Gives the stage's pictures to those who take them along. */
export function PictureServer() {
  const bench = useBench();
  const get = useThree((state) => state.get);
  const palette = usePalette();
  useEffect(
    () =>
      bench.pictures.serve({
        canvas: get().gl.domElement,
        paint: () => get().invalidate(),
        png: (widePx) => larger(get(), widePx),
        glb: async () => {
          const { glbOf } = await import('./glb');
          return glbOf(bench.document.api.getState().committed, palette);
        },
      }),
    [bench, get, palette],
  );
  return null;
}

/** Draws once at another number of pixels, takes the picture, and puts the stage as it was. */
async function larger(
  { gl, scene, camera, invalidate }: RootState,
  widePx: number,
): Promise<Uint8Array<ArrayBuffer>> {
  const size = gl.getSize(new Vector2());
  const ratio = gl.getPixelRatio();
  gl.setPixelRatio(Math.min(widePx, MOST_PX, (MOST_PX * size.x) / size.y) / size.x);
  gl.render(scene, camera);
  // Taken in the same task: what a canvas shows is gone once the browser has drawn it.
  const taken = new Promise<{ arrayBuffer(): Promise<ArrayBuffer> } | null>((resolve) =>
    gl.domElement.toBlob(resolve, 'image/png'),
  );
  gl.setPixelRatio(ratio);
  gl.render(scene, camera);
  invalidate();
  const picture = await taken;
  if (!picture) throw new Error('the browser made no picture of it');
  return new Uint8Array(await picture.arrayBuffer());
}
