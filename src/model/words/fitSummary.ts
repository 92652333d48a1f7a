import type { FitKind, FitProblem } from '../fit/fitProblem';

/** One and several of each kind, as they are counted. */
const COUNTED: readonly {
  readonly kinds: readonly FitKind[];
  readonly single: string;
  readonly many: string;
}[] = [
  { kinds: ['overlap', 'within'], single: 'clash', many: 'clashes' },
  { kinds: ['through'], single: 'through the skin', many: 'through the skin' },
  { kinds: ['outside'], single: 'outside the hull', many: 'outside the hull' },
  { kinds: ['outOfBay'], single: 'out of its bay', many: 'out of their bays' },
  { kinds: ['shortLead'], single: 'lead too short', many: 'leads too short' },
  { kinds: ['tooNear'], single: 'pair too close', many: 'pairs too close' },
  { kinds: ['thinWall'], single: 'wall too thin', many: 'walls too thin' },
  {
    kinds: ['keptFree'],
    single: 'piece of ballast where none may be',
    many: 'pieces of ballast where none may be',
  },
];

/** "2 clashes, 1 outside the hull". */
export function fitCount(problems: readonly FitProblem[]): string {
  return COUNTED.flatMap(({ kinds, single, many }) => {
    const count = problems.filter(({ kind }) => kinds.includes(kind)).length;
    return count > 0 ? [`${count} ${count === 1 ? single : many}`] : [];
  }).join(', ');
}

/** The worst of them in a sentence: "“Receiver” is 16 mm into “Flight pack”." */
export function fitCause(
  { kind, parties: [first, second], byMm }: FitProblem,
  length: (mm: number) => string,
): string {
  const other = second ? `“${second.name}”` : 'what is around it';
  const name = `“${first.name}”`;
  const by = length(byMm);
  switch (kind) {
    case 'overlap':
      return `${name} is ${by} into ${other}.`;
    case 'within':
      return `One of ${name} and ${other} lies inside the other.`;
    case 'through':
      return `${name} reaches ${by} out of ${other}.`;
    case 'outside':
      return `${name} stands in no hull and no wing.`;
    case 'outOfBay':
      return `${name} reaches ${by} out of ${other}.`;
    case 'shortLead':
      return `${name} is ${by} too short.`;
    case 'tooNear':
      return `${name} is ${by} too close to ${other}.`;
    case 'thinWall':
      return `${name} leaves the wall of ${other} ${by} too thin.`;
    case 'keptFree':
      return `${name} reaches ${by} into ${other}, where no ballast may be.`;
  }
}
