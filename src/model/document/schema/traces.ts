import * as v from 'valibot';
import { about, angleDeg, choice, flag, list, placeMm, record, unit } from './fields';

export const traceViews = ['side', 'top', 'front'] as const;

/** The most characters of an image in the file: some 300 kB of it. */
export const longestImage = 400_000;

const IMAGE_WANTED = 'Expected a PNG, JPEG or WebP image as a data: address in base64';
/** Letters of base64 (RFC 4648, section 4), and one of the three kinds that hold nothing but pixels. */
const imageText = v.pipe(
  v.string(IMAGE_WANTED),
  v.maxLength(longestImage, `Expected an image of at most ${longestImage / 1000} kB of text`),
  v.regex(/^data:image\/(png|jpeg|webp);base64,[A-Za-z0-9+/]+={0,2}$/, IMAGE_WANTED),
);

export const LEAST_MM_PER_PX = 1e-3;
export const MOST_MM_PER_PX = 1e3;
const SCALE_WANTED = `Expected ${LEAST_MM_PER_PX} to ${MOST_MM_PER_PX} mm for each pixel`;

/** Where a drawing lies under an elevation. */
export const trace = record(
  {
    view: about(choice(traceViews), 'the elevation that it lies under; no two lie under the same'),
    cornerMm: about(
      v.strictTuple([placeMm, placeMm], 'Expected [across, upright] in mm'),
      "where the image's upper left pixel lies: [station, waterline] from the side, [station, buttline] from above, [buttline, waterline] from ahead, mm",
    ),
    mmPerPx: about(
      v.pipe(
        v.number(SCALE_WANTED),
        v.minValue(LEAST_MM_PER_PX, SCALE_WANTED),
        v.maxValue(MOST_MM_PER_PX, SCALE_WANTED),
      ),
      'mm for each pixel of the image',
    ),
    turnDeg: about(angleDeg, 'turned about that corner as it is seen, anticlockwise +'),
    mirrored: about(flag, 'left for right, before it is turned'),
    opacity: about(unit, 'how much of what is behind it it covers, 0 to 1'),
    locked: about(flag, 'held where it lies'),
  },
  'where a photo or a drawing lies under an elevation, to draw the aircraft by',
);

export const traceImage = record(
  {
    view: choice(traceViews),
    image: about(imageText, 'the image itself, as a data: address: PNG, JPEG or WebP'),
  },
  'the image of a trace; apart from its place, so that moving it does not copy it',
);

export const traces = about(v.optional(list(trace, traceViews.length)), 'drawings under the elevations');
export const traceImages = about(v.optional(list(traceImage, traceViews.length)), 'their images');
