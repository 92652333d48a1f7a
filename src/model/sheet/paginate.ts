/** One piece of the flow, as it was measured. */
export interface FlowPiece {
  readonly heightMm: number;
  /** Not to be left alone at the foot of a page: a heading. */
  readonly keepWithNext?: boolean;
  /** The table that it is a row of; where one goes on after a page break its head is repeated. */
  readonly tableId?: string;
  readonly headMm?: number;
  /** Begins a new page. */
  readonly startsPage?: boolean;
}

/** A piece on its page, by its place in the flow. */
export interface PlacedPiece {
  readonly at: number;
  /** The head of its table stands above it. */
  readonly withHead: boolean;
}

/**
 * Deals a flow onto pages, in order, as much to each as fits. A row that begins a table, or is the first on its page, has the
 * head of its table above it. What is higher than a page gets one to itself. No piece is lost and none is cut.
 */
export function paginate(pieces: readonly FlowPiece[], pageMm: number): readonly (readonly PlacedPiece[])[] {
  const pages: PlacedPiece[][] = [];
  let page: PlacedPiece[] = [];
  let usedMm = 0;
  const turn = () => {
    if (page.length > 0) pages.push(page);
    page = [];
    usedMm = 0;
  };
  pieces.forEach((piece, at) => {
    const needed = () => neededMm(pieces, at, page.at(-1)?.at ?? null);
    if (page.length > 0 && (piece.startsPage || usedMm + needed() > pageMm + 1e-6)) turn();
    const withHead = beginsTable(pieces, at, page.at(-1)?.at ?? null);
    usedMm += piece.heightMm + (withHead ? (piece.headMm ?? 0) : 0);
    page.push({ at, withHead });
  });
  turn();
  return pages;
}

const beginsTable = (pieces: readonly FlowPiece[], at: number, before: number | null): boolean => {
  const { tableId } = pieces[at]!;
  return tableId !== undefined && (before === null || pieces[before]?.tableId !== tableId);
};

/** What has to fit for a piece to stand on a page: with a heading, what comes under it too. */
function neededMm(pieces: readonly FlowPiece[], at: number, before: number | null): number {
  const piece = pieces[at]!;
  const ownMm = piece.heightMm + (beginsTable(pieces, at, before) ? (piece.headMm ?? 0) : 0);
  const next = pieces[at + 1];
  return piece.keepWithNext && next && !next.startsPage ? ownMm + neededMm(pieces, at + 1, at) : ownMm;
}
