/** Papers that the sheet is laid out for, upright. */
export const PAPERS = ['a4', 'letter'] as const;
export type PaperId = (typeof PAPERS)[number];

/** A size on paper, mm. */
export interface Size {
  readonly wideMm: number;
  readonly highMm: number;
}

export interface Paper extends Size {
  readonly id: PaperId;
  readonly name: string;
}

/** A4 of ISO 216; US Letter is size A of ANSI/ASME Y14.1, 8.5 × 11 in. */
export const papers: Readonly<Record<PaperId, Paper>> = {
  a4: { id: 'a4', name: 'A4', wideMm: 210, highMm: 297 },
  letter: { id: 'letter', name: 'US Letter', wideMm: 215.9, highMm: 279.4 },
};

/** The margins of a drawing sheet, mm: 20 at the left, to file it by, and 10 elsewhere (ISO 5457). */
export const MARGINS = { left: 20, right: 10, top: 10, bottom: 10 } as const;

/** The title block at the foot of every page, mm. ISO 7200 makes it 180 wide, which is what A4 leaves. */
export const TITLE_BLOCK_MM = 19;
/** The line at the head of every page that says what stands in the way of a flight, mm. */
export const BANNER_MM = 9;
/** Between banner, body and title block, mm. */
export const GAP_MM = 4;

/** What a page leaves for its body. */
export function bodyOf({ wideMm, highMm }: Paper, banner: boolean): Size {
  const { left, right, top, bottom } = MARGINS;
  const head = banner ? BANNER_MM + GAP_MM : 0;
  return {
    wideMm: round(wideMm - left - right),
    highMm: round(highMm - top - bottom - TITLE_BLOCK_MM - GAP_MM - head),
  };
}

const round = (mm: number) => Math.round(mm * 1e6) / 1e6;
