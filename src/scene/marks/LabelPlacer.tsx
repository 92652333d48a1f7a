import { type RefObject, useMemo } from 'react';
import { Vector3 } from 'three';
import { type LabelAsk, labelPlaces } from '../../interaction/labelPlaces';
import { itemExtent } from '../../model/airframe/extent';
import { type Item, itemById } from '../../model/document/edit';
import type { Aircraft } from '../../model/document/types';
import { useBench } from '../../store/react';
import { toWorld } from '../frame/frame';
import { useEachFrame } from '../frame/useEachFrame';
import type { LabelElements } from './Labels';
import type { StabilityElements } from './StabilityOverlay';

/** How many of the heaviest things are named in the free view. */
const HEAVIEST = 6;

interface LabelPlacerProps {
  readonly elements: RefObject<LabelElements>;
  /** No pill may cover these. */
  readonly marks: RefObject<StabilityElements>;
}

/** Puts the pills where their things are, with each frame, and hides those that would cover another. */
export function LabelPlacer({ elements, marks }: LabelPlacerProps) {
  const bench = useBench();
  const point = useMemo(() => new Vector3(), []);
  useEachFrame(({ camera, size }) => {
    const aircraft = bench.document.current();
    const { cgMm } = bench.balance.get();
    const toPx = (): [number, number] => {
      point.project(camera);
      return [((point.x + 1) / 2) * size.width, ((1 - point.y) / 2) * size.height];
    };
    const asks: LabelAsk[] = [];
    for (const { item, must } of wanted(aircraft, bench.view.getState())) {
      const element = elements.current.get(item.id);
      if (!element) continue;
      if (!element.dataset.width) element.dataset.width = String(element.offsetWidth);
      const { minMm, maxMm } = itemExtent(item);
      const across = [(minMm[0] + maxMm[0]) / 2, (minMm[1] + maxMm[1]) / 2] as const;
      toWorld([...across, minMm[2]], point);
      const [, bottomPx] = toPx();
      toWorld([...across, maxMm[2]], point);
      const [x, topPx] = toPx();
      asks.push({ id: item.id, x, topPx, bottomPx, width: Number(element.dataset.width), height: 22, must });
    }
    const taken = [...marks.current.boxes];
    if (cgMm) {
      toWorld(cgMm, point);
      const [x, y] = toPx();
      taken.push({ left: x - 18, top: y - 18, width: 36, height: 36 });
    }
    const stage = { left: 0, top: 0, width: size.width, height: size.height };
    const tops = new Map(asks.map(({ id, topPx }) => [id, topPx]));
    const places = labelPlaces(asks, taken, stage);
    for (const [id, element] of elements.current) {
      const box = places.get(id);
      element.style.visibility = box ? 'visible' : 'hidden';
      if (box) element.dataset.below = String(box.top > (tops.get(id) ?? 0));
      if (box) element.style.transform = `translate(${box.left}px, ${box.top}px)`;
    }
  });
  return null;
}

interface Looking {
  readonly view: string;
  readonly selectedId: string | null;
  readonly hoveredId: string | null;
  readonly hiddenIds: readonly string[];
}

/** What to name: the selected and the hovered always, the heaviest parts in the free view where there is room. */
function wanted(
  aircraft: Aircraft,
  { view, selectedId, hoveredId, hiddenIds }: Looking,
): { item: Item; must: boolean }[] {
  const asked = [selectedId, hoveredId].flatMap((id, i) => {
    const item = id && (i === 0 || id !== selectedId) ? itemById(aircraft, id) : undefined;
    return item ? [{ item, must: true }] : [];
  });
  if (view !== 'free') return asked;
  const heavy = [...aircraft.parts]
    .filter(({ id }) => id !== selectedId && id !== hoveredId && !hiddenIds.includes(id))
    .sort((a, b) => b.massG - a.massG)
    .slice(0, HEAVIEST)
    .map((item) => ({ item, must: false }));
  return [...asked, ...heavy];
}
