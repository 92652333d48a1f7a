import type { Part } from '../../model/document/types';
import type { Wiring } from '../../model/power/wiring';

/** A part in the diagram: its column from the packs on, and its row. */
export interface DiagramNode {
  readonly part: Part;
  readonly column: number;
  readonly row: number;
}

export interface Diagram {
  readonly nodes: readonly DiagramNode[];
  readonly columns: number;
  readonly rows: number;
}

/** Packs in the first column, everything else one column after the last that feeds it; what nothing feeds beside the packs. */
export function diagramOf({ packs, units, feeds }: Wiring): Diagram {
  const columnOf = new Map<string, number>(packs.map(({ id }) => [id, 0]));
  const column = (part: Part): number => {
    const before = columnOf.get(part.id);
    if (before !== undefined) return before;
    const after = feeds.filter(({ to }) => to.id === part.id).map(({ from }) => column(from));
    const here = after.length > 0 ? Math.max(...after) + 1 : 0;
    columnOf.set(part.id, here);
    return here;
  };
  const all = [...packs, ...units];
  const columns = Math.max(0, ...all.map(column)) + 1;
  const rowOf = new Map<string, number>();
  const nodes: DiagramNode[] = [];
  for (let at = 0; at < columns; at++) {
    const here = all.filter((part) => column(part) === at);
    const heightOf = (part: Part): number => {
      const rows = feeds.flatMap(({ from, to }) => (to.id === part.id ? (rowOf.get(from.id) ?? []) : []));
      return rows.length > 0 ? rows.reduce((sum, row) => sum + row, 0) / rows.length : 0;
    };
    for (const [row, part] of here.toSorted((a, b) => heightOf(a) - heightOf(b)).entries()) {
      rowOf.set(part.id, row);
      nodes.push({ part, column: at, row });
    }
  }
  return { nodes, columns, rows: Math.max(0, ...nodes.map(({ row }) => row + 1)) };
}
