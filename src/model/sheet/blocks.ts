import type { Drawing } from './drawing';

/** A cell of a table: words, a box to tick, or a box to write in. */
export interface Cell {
  readonly text: string;
  /** Small print under it. */
  readonly under?: string;
  readonly box?: 'tick' | 'write';
}

export interface Column {
  readonly label: string;
  readonly widthMm: number;
  readonly align: 'left' | 'right' | 'centre';
}

export interface Row {
  readonly id: string;
  readonly cells: readonly Cell[];
  /** Set apart from what stands above it: a sum. */
  readonly strong?: boolean;
}

/** What a page is made of, from top to bottom. */
export type Block =
  | { readonly kind: 'heading'; readonly text: string; readonly level: 1 | 2 }
  | { readonly kind: 'text'; readonly text: string; readonly role: 'plain' | 'lead' | 'note' | 'warn' }
  | {
      readonly kind: 'table';
      readonly id: string;
      readonly columns: readonly Column[];
      readonly rows: readonly Row[];
      /** Rows high enough to write in. */
      readonly roomy?: boolean;
    }
  | { readonly kind: 'tick'; readonly text: string; readonly note?: string }
  | { readonly kind: 'drawing'; readonly drawing: Drawing }
  | { readonly kind: 'fill'; readonly labels: readonly string[] }
  /** What follows begins a new page. */
  | { readonly kind: 'break' };

export const SECTIONS = [
  'drawings',
  'parts',
  'fitting',
  'templates',
  'cg',
  'weighing',
  'checks',
  'card',
] as const;
export type SectionId = (typeof SECTIONS)[number];

export interface Section {
  readonly id: SectionId;
  /** As it stands in the title block. */
  readonly title: string;
  readonly blocks: readonly Block[];
}

/** What the ticks are called. */
export const sectionNames: Readonly<Record<SectionId, string>> = {
  drawings: 'Drawings',
  parts: 'Parts and leads',
  fitting: 'Order of fitting',
  templates: 'Templates, 1:1',
  cg: 'Centre of gravity',
  weighing: 'Weigh-in form',
  checks: 'Before the first flight',
  card: 'Field card',
};

export const cell = (text: string, under?: string): Cell => (under ? { text, under } : { text });
export const writeBox: Cell = { text: '', box: 'write' };
export const tickBox: Cell = { text: '', box: 'tick' };
export const heading = (text: string, level: 1 | 2 = 1): Block => ({ kind: 'heading', text, level });
export const words = (text: string, role: 'plain' | 'lead' | 'note' | 'warn' = 'plain'): Block => ({
  kind: 'text',
  text,
  role,
});
export const drawn = (drawing: Drawing): Block => ({ kind: 'drawing', drawing });
export const BREAK: Block = { kind: 'break' };

/** Widths in shares of a whole, so that a table fills its page. */
export const columnsOf = (
  wideMm: number,
  shares: readonly (readonly [label: string, share: number, align?: Column['align']])[],
): readonly Column[] => {
  const sum = shares.reduce((total, [, share]) => total + share, 0);
  return shares.map(([label, share, align = 'left']) => ({
    label,
    widthMm: (share / sum) * wideMm,
    align,
  }));
};
