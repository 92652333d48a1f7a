import { type RefObject, useMemo } from 'react';
import { Vector3 } from 'three';
import { type LabelBox, overlap } from '../../interaction/labelPlaces';
import { useBench } from '../../store/react';
import { toWorld } from '../frame/frame';
import { useEachFrame } from '../frame/useEachFrame';
import { FitClash } from './FitClash';
import { FitDimension } from './FitDimension';
import { FitLeads } from './FitLeads';
import { FitRooms } from './FitRooms';
import { fitLabels } from './fitReadings';
import { KeepOut } from './KeepOut';

interface FitMarksProps {
  /** Where the words go, over the picture. */
  readonly labels: RefObject<HTMLElement | null>;
}

/** All that the stage shows of fit: rooms and openings, leads, the nearest distance, clashes, zones to keep out of. */
export default function FitMarks({ labels }: FitMarksProps) {
  return (
    <>
      <FitRooms />
      <FitLeads />
      <FitDimension />
      <FitClash />
      <KeepOut />
      <FitWords labels={labels} />
    </>
  );
}

/** Beside the point, and as high as its style makes it, px. */
const ASIDE_PX = 8;
const HIGH_PX = 18;

/** The same box, or where that is taken one further down. */
function below(taken: readonly LabelBox[], box: LabelBox): LabelBox {
  const other = taken.find((one) => overlap(one, box));
  return other ? below(taken, { ...box, top: other.top + other.height + 5 }) : box;
}

/** Writes and places the words with each frame; they are few, and spans that are not needed stay hidden. */
function FitWords({ labels }: FitMarksProps) {
  const bench = useBench();
  const point = useMemo(() => new Vector3(), []);
  useEachFrame(({ camera, size }) => {
    const place = labels.current;
    if (!place) return;
    const words = fitLabels(bench);
    const taken: LabelBox[] = [];
    while (place.children.length < words.length) {
      place.append(Object.assign(document.createElement('span'), { className: 'stage-fit' }));
    }
    for (const [i, span] of [...place.children].entries()) {
      if (!(span instanceof HTMLElement)) continue;
      const label = words[i];
      if (label) toWorld(label.atMm, point).project(camera);
      const seen = label && Math.abs(point.x) < 1 && Math.abs(point.y) < 1 && Math.abs(point.z) < 1;
      span.style.visibility = seen ? 'visible' : 'hidden';
      if (!seen) continue;
      if (span.textContent !== label.text) {
        span.textContent = label.text;
        span.dataset.width = String(span.offsetWidth);
      }
      span.dataset.tone = label.tone;
      const [x, y] = [((point.x + 1) / 2) * size.width, ((1 - point.y) / 2) * size.height];
      const width = Number(span.dataset.width);
      const left = Math.max(0, Math.min(x + ASIDE_PX, size.width - width));
      const box = below(taken, { left, top: y - HIGH_PX / 2, width, height: HIGH_PX });
      taken.push(box);
      span.style.transform = `translate(${box.left}px, ${box.top}px)`;
    }
  });
  return null;
}
