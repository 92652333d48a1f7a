const ENDINGS = ['.png', '.jpg', '.jpeg', '.webp'] as const;
/** Pictures that are named so that a person reads why they are not taken. */
const OTHERS = ['.svg', '.gif', '.bmp', '.tif', '.tiff', '.heic', '.avif', '.pdf'] as const;

export const PICTURE_ENDINGS = ENDINGS.join(',');

export const isPictureName = (name: string): boolean =>
  [...ENDINGS, ...OTHERS].some((ending) => name.toLowerCase().endsWith(ending));
