import { useThree } from '@react-three/fiber';
import { type RefObject, useEffect, useMemo, useRef } from 'react';
import { type Camera, Vector3 } from 'three';
import type { Vec3 } from '../../engine/geometry/types';
import { type LabelAsk, type LabelBox, labelLayout } from '../../interaction/labelLayout';
import { LEVEL } from '../../model/balance/balance';
import { useBench } from '../../store/react';
import { layerShown } from '../../store/viewStore';
import { toWorld } from '../frame/frame';
import { useTilt } from '../frame/tilt';
import { useEachFrame } from '../frame/useEachFrame';
import { type CoveredBoxes, watchCovered } from './coveredBoxes';
import type { LabelPlace } from './Labels';
import { plumbLine } from './plumbLine';
import { type FitWords, namesOn, neutralPointMm, type StageWord, stageWords } from './stageWords';
import { forgetWidths, wordWidth } from './wordWidth';

const HEIGHT_PX = 22;
const FONT = '560 12px "Atkinson Hyperlegible Next", "Segoe UI", system-ui, sans-serif';
/** Either side of the words in their pill. */
const PADDING_PX = 8;
/** What the disc and the ring cover, px. */
const DISC_PX = 36;
const RING_PX = 26;

interface LabelPlacerProps {
  readonly box: RefObject<HTMLElement | null>;
  readonly place: RefObject<LabelPlace>;
  readonly fitWords: RefObject<FitWords | null>;
}

/** Writes the words and keeps them apart, with each frame; nothing of the page's layout is read for it. */
export function LabelPlacer({ box, place, fitWords }: LabelPlacerProps) {
  const bench = useBench();
  const tilt = useTilt();
  const invalidate = useThree((state) => state.invalidate);
  const point = useMemo(() => new Vector3(), []);
  const covered = useRef<CoveredBoxes>(null);
  const offsets = useRef(new Map<string, readonly [number, number]>());

  useEffect(() => {
    if (!box.current) return;
    const watched = watchCovered(box.current, () => invalidate());
    covered.current = watched;
    let here = true;
    void document.fonts.ready.then(() => {
      if (!here) return;
      forgetWidths();
      invalidate();
    });
    return () => {
      here = false;
      watched.stop();
    };
  }, [box, invalidate]);
  useEffect(
    () =>
      bench.view.subscribe((now, before) => {
        if (now.view !== before.view) offsets.current.clear();
      }),
    [bench],
  );

  useEachFrame(({ camera, size }) => {
    const { words, leaders, neutralPoint } = place.current;
    if (!words || !leaders) return;
    const toPx = (atMm: Vec3) => project(atMm, camera, size, point);
    const taken: LabelBox[] = [...(covered.current?.now() ?? [])];
    const { cgMm } = bench.balance.get();
    const now = bench.view.getState();
    const held =
      cgMm && now.down !== LEVEL ? plumbLine(cgMm, now.view, now.down, tilt.getState()).footMm : null;
    const disc = cgMm && layerShown(now, 'cg') ? toPx(cgMm) : null;
    if (disc) taken.push(boxAround(disc, DISC_PX));
    const ring = neutralPointMm(bench);
    const ringPx = ring && toPx(ring);
    if (ringPx) taken.push(boxAround(ringPx, RING_PX));
    if (neutralPoint) {
      setStyle(neutralPoint, 'visibility', ringPx ? 'visible' : 'hidden');
      setData(neutralPoint, 'fresh', String(bench.stability.get().fresh));
      if (ringPx) setStyle(neutralPoint, 'transform', `translate(${ringPx[0]}px, ${ringPx[1]}px)`);
    }

    const said = stageWords(bench, fitWords.current, held, namesOn(size.width, size.height));
    const asks = said.flatMap((word): LabelAsk[] => {
      const at = toPx(word.atMm);
      if (!at) return [];
      const width = wordWidth(word.text, FONT) + 2 * PADDING_PX;
      return [{ id: word.id, x: at[0], y: at[1], width, height: HEIGHT_PX, must: word.must }];
    });
    const stage = { left: 0, top: 0, width: size.width, height: size.height };
    const placed = labelLayout(asks, taken, stage, offsets.current);
    offsets.current.clear();
    for (const { id, x, y } of asks) {
      const at = placed.get(id);
      if (at) offsets.current.set(id, [at.left - x, at.top - y]);
    }
    write(words, said, placed, bench.stability.get().fresh);
    const lines = [...placed.values()].flatMap(({ leader }) => (leader ? [leader] : []));
    const drawn = lines.map(([a, b, c, d]) => `M${a} ${b}L${c} ${d}`).join('');
    if (leaders.getAttribute('d') !== drawn) leaders.setAttribute('d', drawn);
  });
  return null;
}

const boxAround = ([x, y]: readonly [number, number], sidePx: number): LabelBox => ({
  left: x - sidePx / 2,
  top: y - sidePx / 2,
  width: sidePx,
  height: sidePx,
});

/** Where a point of the aircraft falls in the picture, px; null behind the eye or off it. */
function project(
  atMm: Vec3,
  camera: Camera,
  { width, height }: { readonly width: number; readonly height: number },
  into: Vector3,
): [number, number] | null {
  toWorld(atMm, into).project(camera);
  if (Math.abs(into.x) > 1 || Math.abs(into.y) > 1 || Math.abs(into.z) > 1) return null;
  return [((into.x + 1) / 2) * width, ((1 - into.y) / 2) * height];
}

/** A span for each word from the pool; those without a place are hidden. */
function write(
  pool: HTMLElement,
  words: readonly StageWord[],
  placed: ReadonlyMap<string, LabelBox>,
  fresh: boolean,
): void {
  while (pool.children.length < words.length) {
    pool.append(Object.assign(window.document.createElement('span'), { className: 'stage-label' }));
  }
  for (let i = 0; i < pool.children.length; i += 1) {
    const span = pool.children[i];
    if (!(span instanceof HTMLElement)) continue;
    const word = words[i];
    const at = word && placed.get(word.id);
    setStyle(span, 'visibility', at ? 'visible' : 'hidden');
    if (!word || !at) continue;
    setWords(span, word.text);
    setData(span, 'look', word.look);
    setData(span, 'fresh', String(word.look !== 'neutralPoint' || fresh));
    setStyle(span, 'transform', `translate(${at.left}px, ${at.top}px)`);
  }
}

/** In the same piece of text, where there is one: a new one would cost more to lay out. */
function setWords(element: HTMLElement, words: string): void {
  const { firstChild } = element;
  if (!(firstChild instanceof Text)) element.textContent = words;
  else if (firstChild.data !== words) firstChild.data = words;
}

/** What is written again as it was costs the page its style and layout all the same. */
function setStyle(element: HTMLElement, name: 'visibility' | 'transform', value: string): void {
  if (element.style[name] !== value) element.style[name] = value;
}

function setData(element: HTMLElement, name: 'look' | 'fresh', value: string): void {
  if (element.dataset[name] !== value) element.dataset[name] = value;
}
