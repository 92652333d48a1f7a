import type { TapeField } from '../../model/begin/tape';

/** How each is taken, said while it is being typed. */
export const howMeasured: Readonly<Record<TapeField, string>> = {
  spanMm: 'Tip to tip, straight across.',
  rootChordMm: 'Along the body, where the wing meets it.',
  tipChordMm: 'Where the straight part of the wing ends, before a rounded or bent-up tip.',
  sweepMm: 'How far the leading edge lies behind the root’s where the straight part ends, along the body.',
  lengthMm: 'From the nose of the body, behind the spinner, to the last of tail or body.',
  wingAtMm: 'From the nose to the wing’s leading edge where it meets the body.',
  tailSpanMm: 'Tip to tip.',
  tailChordMm: 'Half-way out, leading to trailing edge.',
};
