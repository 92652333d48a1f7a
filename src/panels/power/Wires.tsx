import { useMemo } from 'react';
import type { Part } from '../../model/document/types';
import { atFull, flowAt, wiringIslands } from '../../model/power/flows';
import type { PowerProblem } from '../../model/power/powerProblems';
import { type Wiring, wiringOf } from '../../model/power/wiring';
import { ampWords, voltWords } from '../../model/words/powerWords';
import { useBench, useCommitted, useView } from '../../store/react';
import { type DiagramNode, diagramOf } from './diagram';

/** Four columns stand side by side on a tablet, a name takes two lines, and a finger hits it. */
const WIDE = 160;
const TALL = 44;
const GAP_X = 40;
const GAP_Y = 6;

const xOf = ({ column }: DiagramNode) => column * (WIDE + GAP_X);
const rowsTall = (rows: number) => rows * (TALL + GAP_Y) - GAP_Y;

/** What feeds what: packs on the left, then all that hangs on them. Each can be chosen. */
export function Wires({ problems }: { readonly problems: readonly PowerProblem[] }) {
  const wiring = useCommitted(wiringOf);
  const drawn = useMemo(() => wiring && diagramOf(wiring), [wiring]);
  const volts = useMemo(() => wiring && voltsOf(wiring), [wiring]);
  const selectedId = useView((view) => view.selectedId);
  if (!wiring || !drawn || !volts) return null;
  const { nodes, columns, rows } = drawn;
  const tall = rowsTall(rows);
  // A short column stands in the middle of its height.
  const columnTall = (column: number) => rowsTall(nodes.filter((node) => node.column === column).length);
  const yOf = ({ column, row }: DiagramNode) => row * (TALL + GAP_Y) + (tall - columnTall(column)) / 2;
  const at = new Map(nodes.map((node) => [node.part.id, node]));
  const wide = columns * (WIDE + GAP_X) - GAP_X;
  return (
    <div className="wires">
      <div className="wires-sheet" style={{ width: wide, height: tall }}>
        <svg width={wide} height={tall} aria-hidden="true">
          {wiring.feeds.map(({ from, to, supply }) => {
            const [a, b] = [at.get(from.id), at.get(to.id)];
            if (!a || !b) return null;
            const [x1, x2] = [xOf(a) + WIDE, xOf(b)];
            const [y1, y2] = [yOf(a) + TALL / 2, yOf(b) + TALL / 2];
            const on = from.id === selectedId || to.id === selectedId;
            return (
              <path
                key={`${from.id} ${to.id}`}
                d={`M${x1} ${y1}C${x1 + GAP_X / 2} ${y1} ${x2 - GAP_X / 2} ${y2} ${x2} ${y2}`}
                data-past={supply.pastRegulator || undefined}
                data-on={on || undefined}
              />
            );
          })}
        </svg>
        {nodes.map((node) => (
          <Node
            key={node.part.id}
            part={node.part}
            left={xOf(node)}
            top={yOf(node)}
            says={volts.get(node.part.id) ?? ''}
            selected={node.part.id === selectedId}
            problem={problems.find((problem) => isAt(problem, node.part.id))}
          />
        ))}
      </div>
    </div>
  );
}

/** Whether a problem is shown at a part; that of a connector where it leads to. */
function isAt(problem: PowerProblem, id: string): boolean {
  if (problem.kind === 'starved') return problem.packs.some((pack) => pack.id === id);
  if (problem.kind === 'over-current') return (problem.to ?? problem.part).id === id;
  return 'part' in problem && problem.part.id === id;
}

interface NodeProps {
  readonly part: Part;
  readonly left: number;
  readonly top: number;
  readonly says: string;
  readonly selected: boolean;
  readonly problem: PowerProblem | undefined;
}

function Node({ part, left, top, says, selected, problem }: NodeProps) {
  const { view } = useBench();
  return (
    <button
      type="button"
      className="wires-node"
      style={{ left, top, width: WIDE, height: TALL, borderLeftColor: `var(--${part.role})` }}
      aria-pressed={selected}
      data-tone={problem?.severity}
      title={part.name}
      onClick={() => view.setState({ selectedId: part.id })}
    >
      <span>{part.name}</span>
      <span className="figure">{says}</span>
    </button>
  );
}

/** What stands beside each name: a pack’s current and a unit’s voltage, at full throttle with packs at their nominal voltage. */
function voltsOf(wiring: Wiring): ReadonlyMap<string, string> {
  return new Map(wiringIslands(wiring).flatMap(islandVolts));
}

function islandVolts(island: Wiring): readonly (readonly [string, string])[] {
  const flow = flowAt(island, 'nominalV', atFull);
  if (!flow) return [...island.packs, ...island.units].map(({ id }) => [id, 'too much']);
  return [
    ...island.packs.map(({ id }) => [id, ampWords(flow.packA.get(id) ?? 0)] as const),
    ...island.units.map(({ id }) => {
      const volts = flow.unitV.get(id);
      return [id, volts == null ? 'not fed' : voltWords(volts)] as const;
    }),
  ];
}
