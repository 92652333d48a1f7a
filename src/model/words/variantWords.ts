import { itemById, structureById } from '../document/edit';
import { shownText } from '../document/names';
import type { Aircraft } from '../document/types';
import { sharedAircraft, type Variant, variantFrom } from '../document/variants';
import type { Best } from '../judgement/bestVariant';
import { bestVariant } from '../judgement/bestVariant';
import type { JudgedVariant } from '../judgement/judgedVariant';
import { lengthDown, type Say } from './say';

/** One way in which the variant on the bench is otherwise than what all share. */
export interface VariantDifference {
  readonly id: string;
  readonly name: string;
  readonly words: string;
  readonly kind: 'left-out' | 'otherwise';
}

/** What the variant on the bench leaves out and has otherwise, in words. */
export function variantDifferences(aircraft: Aircraft, say: Say): readonly VariantDifference[] {
  const shared = sharedAircraft(aircraft);
  const { without = [], changes = [] } = variantFrom(shared, aircraft);
  const nameOf = (id: string) =>
    shownText((itemById(shared, id) ?? structureById(shared, id) ?? { name: id }).name);
  return [
    ...without.map((id) => ({ id, name: nameOf(id), words: 'left out', kind: 'left-out' as const })),
    ...changes.map((change) => ({
      id: change.of,
      name: nameOf(change.of),
      words: changeWords(shared, change, say),
      kind: 'otherwise' as const,
    })),
  ];
}

type Change = NonNullable<Variant['changes']>[number];

const axes = ['station', 'buttline', 'waterline'] as const;

function changeWords(shared: Aircraft, change: Change, say: Say): string {
  const was = itemById(shared, change.of);
  if (!was) return '';
  const [before, after] = [was.positionMm, change.positionMm ?? was.positionMm];
  const places = axes.flatMap((axis, at) => {
    const [from, to] = [before[at]!, after[at]!].map((mm) => (at === 0 ? say.station(mm) : say.length(mm)));
    return from === to ? [] : [`${axis} ${to} instead of ${from}`];
  });
  const wasG = 'massG' in was ? was.massG : was.emptyMassG;
  const isG = change.massG ?? change.emptyMassG;
  const turned = change.yawDeg ?? change.pitchDeg ?? change.rollDeg;
  const words = [
    ...places,
    ...(change.positionMm && places.length === 0 ? ['hardly moved'] : []),
    ...(isG === undefined ? [] : [`${say.mass(isG)} instead of ${say.mass(wasG)}`]),
    ...(change.shape ? ['another size'] : []),
    ...(turned === undefined ? [] : ['turned']),
    ...(change.startMl === undefined ? [] : ['filled otherwise']),
    ...(change.power === undefined ? [] : ['wired otherwise']),
  ];
  return words.join(', ') || 'measured otherwise';
}

/** Which variant is the best and by what, in a sentence; why none is, where that can be said. Null before all are judged. */
export function bestWords(
  list: readonly Variant[],
  judged: ReadonlyMap<string, JudgedVariant>,
  say: Say,
): { readonly best: Best | null; readonly sentence: string } | null {
  const all = list.flatMap(({ id }) => judged.get(id) ?? []);
  if (list.length === 0 || all.length < list.length) return null;
  const best = bestVariant(all);
  const name = shownText(list.find(({ id }) => id === best?.id)?.name ?? '');
  if (best === null) return { best, sentence: noneWords(all) };
  const spare =
    best.spareMm === null
      ? ''
      : `its CG stays ${lengthDown(Math.max(0, best.spareMm), say)} inside the limits in every load state`;
  return best.by === 'findings'
    ? { best, sentence: `Best: ${name}, by the worst that is found of each${spare && `; ${spare}`}.` }
    : { best, sentence: `Best: ${name}, for ${spare}, farther than any other with as little against it.` };
}

function noneWords(all: readonly JudgedVariant[]): string {
  if (all.length < 2) return '';
  return all.every(({ judgement }) => judgement.severity.startsWith('bad'))
    ? 'None may fly as it is.'
    : 'Nothing tells the best of them apart.';
}
