import type { Vec3 } from '../../engine/geometry/types';
import { itemExtent } from '../../model/airframe/extent';
import { type Item, itemById } from '../../model/document/edit';
import { shownText } from '../../model/document/names';
import { wingPlanform } from '../../model/stability/band';
import { formatLength, formatMass, formatVolume } from '../../model/units';
import type { Bench } from '../../store/bench';
import { layerShown } from '../../store/viewStore';

/** Words beside a place of the aircraft. */
export interface StageWord {
  readonly id: string;
  readonly atMm: Vec3;
  readonly text: string;
  readonly look: 'name' | 'selected' | 'clash' | 'plain' | 'bad' | 'neutralPoint' | 'mac' | 'down';
  /** Shown if there is room for it anywhere on the stage. */
  readonly must: boolean;
}

/** Words of fit, from the part of the scene that is fetched later. */
export type FitWords = (bench: Bench) => readonly {
  readonly atMm: Vec3;
  readonly text: string;
  readonly tone: 'plain' | 'bad';
}[];

/** How many of the heaviest items are named in the free view, at most, and how much stage each of them takes, px². */
const HEAVIEST = 6;
const PX2_EACH = 65_000;

/** A small stage is not papered with names. */
export const namesOn = (widthPx: number, heightPx: number): number =>
  Math.min(HEAVIEST, Math.floor((widthPx * heightPx) / PX2_EACH));

/** The estimated neutral point; it is drawn as high as the CG, so that the gap between them shows. */
export function neutralPointMm({ stability, balance, view }: Bench): Vec3 | null {
  const { estimate } = stability.get();
  const now = view.getState();
  if (!estimate || now.view === 'front' || !layerShown(now, 'stability')) return null;
  return [estimate.neutralPointMm, 0, balance.get().cgMm?.[2] ?? 0];
}

const zeroOf = ({ document, view }: Bench): number => {
  const { measureFromId } = view.getState();
  return document.current().referencePoints.find(({ id }) => id === measureFromId)?.positionMm[0] ?? 0;
};

function figureOf({ balance, view }: Bench, item: Item): string {
  const { units } = view.getState();
  if ('massG' in item && 'role' in item) return formatMass(item.massG, units);
  const held = balance.get().liquids.find(({ tankId }) => tankId === item.id);
  return formatVolume(held ? Math.round(held.volumeMl) : 0, units);
}

function nameWord(bench: Bench, item: Item, selected: boolean, must: boolean): StageWord {
  const clash = selected ? bench.fit.clashName(item.id) : '';
  const { minMm, maxMm } = itemExtent(item);
  const top = bench.view.getState().view === 'top';
  const [y, z] = top ? [maxMm[1], (minMm[2] + maxMm[2]) / 2] : [(minMm[1] + maxMm[1]) / 2, maxMm[2]];
  return {
    id: item.id,
    atMm: [(minMm[0] + maxMm[0]) / 2, y, z],
    text: clash
      ? `${shownText(item.name)} · in the way of ${shownText(clash)}`
      : `${shownText(item.name)} · ${figureOf(bench, item)}`,
    look: clash ? 'clash' : selected ? 'selected' : 'name',
    must,
  };
}

/** The selected and the hovered always, in the free view the heaviest parts where there is room. */
function nameWords(bench: Bench, most: number): StageWord[] {
  const { view, selectedId, hoveredId, hiddenIds } = bench.view.getState();
  const aircraft = bench.document.current();
  const asked = [...new Set([selectedId, hoveredId])].flatMap((id) => {
    const item = id ? itemById(aircraft, id) : undefined;
    return item ? [nameWord(bench, item, id === selectedId, true)] : [];
  });
  if (view !== 'free') return asked;
  const heavy = aircraft.parts
    .filter(({ id }) => id !== selectedId && id !== hoveredId && !hiddenIds.includes(id))
    .sort((a, b) => b.massG - a.massG)
    .slice(0, most);
  return [...asked, ...heavy.map((item) => nameWord(bench, item, false, false))];
}

/** All that the stage says now, the most wanted first. */
export function stageWords(
  bench: Bench,
  fitWords: FitWords | null,
  footMm: Vec3 | null,
  most: number,
): StageWord[] {
  const now = bench.view.getState();
  if (now.looking.quiet || now.looking.exploded) return [];
  const names = nameWords(bench, most);
  const fit = (fitWords?.(bench) ?? []).map(
    ({ atMm, text, tone }, i): StageWord => ({
      id: `fit ${i}`,
      atMm,
      text,
      look: tone,
      must: tone === 'bad',
    }),
  );
  const point = neutralPointMm(bench);
  const words: StageWord[] = [...names.filter(({ must }) => must), ...fit.filter(({ must }) => must)];
  if (point) {
    const text = `NP est. ${formatLength(point[0] - zeroOf(bench), now.units)}`;
    words.push({ id: 'neutral point', atMm: point, text, look: 'neutralPoint', must: true });
  }
  if (footMm) words.push({ id: 'down', atMm: footMm, text: 'down', look: 'down', must: true });
  words.push(...fit.filter(({ must }) => !must));
  const wing = layerShown(now, 'stability') ? wingPlanform(bench.document.current()) : null;
  if (wing && (now.view === 'top' || now.view === 'free')) {
    const atMm: Vec3 = [wing.lemacMm, -wing.macButtlineMm, wing.macWaterlineMm];
    words.push({
      id: 'mac',
      atMm,
      text: `MAC ${formatLength(wing.macMm, now.units)}`,
      look: 'mac',
      must: false,
    });
  }
  return [...words, ...names.filter(({ must }) => !must)];
}
