import { useCallback, useRef } from 'react';
import type { Snapped } from '../interaction/snap';
import { useBench, useLive } from '../store/react';
import { type LabelElements, Labels } from './Labels';
import { StageCanvas } from './StageCanvas';
import { StageScene } from './StageScene';
import { dragReading, stageSummary } from './stageReadings';
import { useStageBox } from './useStageBox';
import { useViewFade } from './useViewFade';
import './stage.css';

/** The stage: the aircraft on its mat, seen freely or in three registered elevations. Fills the box it is given. */
export function Stage() {
  const bench = useBench();
  const box = useRef<HTMLDivElement>(null);
  const picture = useRef<HTMLDivElement>(null);
  const readout = useRef<HTMLDivElement>(null);
  const labels = useRef<LabelElements>(new Map());
  const resetFree = useRef(() => {});
  const fit = useStageBox(box);
  const latestFit = useRef(fit);
  latestFit.current = fit;
  const refit = useCallback(() => latestFit.current(), []);
  const onDrag = useCallback(
    (snapped: Snapped | null) => {
      if (readout.current) readout.current.textContent = snapped ? dragReading(bench, snapped) : '';
    },
    [bench],
  );
  useViewFade(box);
  useLive(() => picture.current?.setAttribute('aria-label', stageSummary(bench)));

  return (
    <div ref={box} className="stage-box">
      <div ref={picture} className="stage-canvas" role="img">
        <StageCanvas>
          <StageScene box={box} labels={labels} resetFree={resetFree} refit={refit} onDrag={onDrag} />
        </StageCanvas>
      </div>
      <Labels elements={labels} />
      <div ref={readout} className="stage-readout" aria-hidden="true" />
    </div>
  );
}
