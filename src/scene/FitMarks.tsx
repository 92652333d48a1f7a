import { useFrame } from '@react-three/fiber';
import { type RefObject, useMemo } from 'react';
import { Vector3 } from 'three';
import { useBench } from '../store/react';
import { FitClash } from './FitClash';
import { FitDimension } from './FitDimension';
import { FitLeads } from './FitLeads';
import { FitRooms } from './FitRooms';
import { fitLabels } from './fitReadings';
import { toWorld } from './frame';
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

/** Writes and places the words with each frame; they are few, and spans that are not needed stay hidden. */
function FitWords({ labels }: FitMarksProps) {
  const bench = useBench();
  const point = useMemo(() => new Vector3(), []);
  useFrame(({ camera, size }) => {
    const box = labels.current;
    if (!box) return;
    const words = fitLabels(bench);
    while (box.children.length < words.length) {
      box.append(Object.assign(document.createElement('span'), { className: 'stage-fit' }));
    }
    for (const [i, span] of [...box.children].entries()) {
      if (!(span instanceof HTMLElement)) continue;
      const label = words[i];
      if (label) toWorld(label.atMm, point).project(camera);
      const seen = label && Math.abs(point.x) < 1 && Math.abs(point.y) < 1 && Math.abs(point.z) < 1;
      span.style.visibility = seen ? 'visible' : 'hidden';
      if (!seen) continue;
      if (span.textContent !== label.text) span.textContent = label.text;
      span.dataset.tone = label.tone;
      const [x, y] = [((point.x + 1) / 2) * size.width, ((1 - point.y) / 2) * size.height];
      span.style.transform = `translate(${x}px, ${y}px)`;
    }
  });
  return null;
}
