import type { Block, Row, SectionId } from '../../model/sheet/blocks';
import type { FlowPiece } from '../../model/sheet/paginate';
import type { BuildSheet } from '../../model/sheet/sheet';

export type TableBlock = Extract<Block, { kind: 'table' }>;

/** One piece of the flow: a block, or a row of one that is a table. */
export interface Piece {
  readonly key: string;
  readonly section: SectionId;
  readonly title: string;
  readonly block: Exclude<Block, { kind: 'break' }> | { readonly kind: 'card' };
  readonly row: Row | null;
  readonly startsPage: boolean;
}

/** The sheet as a flow of pieces; each section begins a page. */
export function piecesOf({ sections, card }: BuildSheet): readonly Piece[] {
  const pieces: Piece[] = [];
  for (const { id, title, blocks } of sections) {
    let startsPage = true;
    const put = (key: string, block: Piece['block'], row: Row | null = null) => {
      pieces.push({ key: `${id} ${key}`, section: id, title, block, row, startsPage });
      startsPage = false;
    };
    blocks.forEach((block, at) => {
      if (block.kind === 'break') startsPage = true;
      else if (block.kind === 'table') for (const row of block.rows) put(`${at} ${row.id}`, block, row);
      else put(String(at), block);
    });
    if (id === 'card' && card) put('card', { kind: 'card' });
  }
  return pieces;
}

/** What a table is called in its whole sheet. */
export const tableIdOf = ({ section, block }: Piece): string | undefined =>
  block.kind === 'table' ? `${section} ${block.id}` : undefined;

/** Heights that were measured, mm, by the piece’s key and by the table’s id. */
export interface Heights {
  readonly pieces: ReadonlyMap<string, number>;
  readonly heads: ReadonlyMap<string, number>;
}

export const flowOf = (pieces: readonly Piece[], heights: Heights): readonly FlowPiece[] =>
  pieces.map((piece): FlowPiece => {
    const tableId = tableIdOf(piece);
    return {
      heightMm: heights.pieces.get(piece.key) ?? 0,
      startsPage: piece.startsPage,
      keepWithNext: piece.block.kind === 'heading',
      ...(tableId !== undefined && { tableId, headMm: heights.heads.get(tableId) ?? 0 }),
    };
  });
