import { useCallback, useRef, useState } from 'react';
import { useLive } from '../store/react';
import { useStageBox } from './frame/useStageBox';
import { useViewFade } from './frame/useViewFade';
import { stageSummary } from './gestures/stageReadings';
import { type LabelElements, Labels } from './marks/Labels';
import { type StabilityElements, StabilityOverlay } from './marks/StabilityOverlay';
import { StageCanvas } from './StageCanvas';
import { StageScene } from './StageScene';
import type { StageFailure, StageTroubleView } from './stageFailure';
import './stage.css';

/** The stage: the aircraft on its mat, seen freely or in three registered elevations. Fills the box it is given. */
export function Stage({ trouble: Trouble }: { readonly trouble: StageTroubleView }) {
  const box = useRef<HTMLDivElement>(null);
  const picture = useRef<HTMLDivElement>(null);
  const readout = useRef<HTMLDivElement>(null);
  const labels = useRef<LabelElements>(new Map());
  const marks = useRef<StabilityElements>({ neutralPoint: null, mac: null, boxes: [] });
  const fitLabels = useRef<HTMLDivElement>(null);
  const resetFree = useRef(() => {});
  const fit = useStageBox(box);
  const latestFit = useRef(fit);
  latestFit.current = fit;
  const refit = useCallback(() => latestFit.current(), []);
  const onDrag = useCallback((reading: string | null) => {
    if (readout.current) readout.current.textContent = reading ?? '';
  }, []);
  const [failure, setFailure] = useState<StageFailure | null>(null);
  /** Counts the canvases: one that failed is not used again. */
  const [canvasNumber, setCanvasNumber] = useState(0);
  const drawAnew = () => {
    setFailure(null);
    setCanvasNumber(canvasNumber + 1);
  };
  useViewFade(box);
  useLive((bench) => picture.current?.setAttribute('aria-label', stageSummary(bench)));

  return (
    <div ref={box} className="stage-box">
      <div ref={picture} className="stage-canvas" role="img">
        <StageCanvas key={canvasNumber} onFailure={setFailure}>
          <StageScene
            box={box}
            labels={labels}
            resetFree={resetFree}
            refit={refit}
            onDrag={onDrag}
            marks={marks}
            fitLabels={fitLabels}
          />
        </StageCanvas>
      </div>
      <StabilityOverlay elements={marks} />
      <Labels elements={labels} />
      <div ref={fitLabels} className="stage-labels" aria-hidden="true" data-testid="stage-fit" />
      <div ref={readout} className="stage-readout" aria-hidden="true" />
      {failure && (
        <div className="stage-trouble">
          <Trouble failure={failure} onRetry={drawAnew} />
        </div>
      )}
    </div>
  );
}
