import { useCallback, useRef, useState } from 'react';
import { createPiece } from '../store/piece';
import { useScenePiece } from './frame/useScenePiece';
import { useStageBox } from './frame/useStageBox';
import { type HandlePlace, noHandles } from './gestures/handlePlace';
import { type LabelPlace, Labels } from './marks/Labels';
import { StageCanvas } from './StageCanvas';
import { StageScene } from './StageScene';
import type { StageFailure, StageTroubleView } from './stageFailure';
import './stage.css';

// The bar, and what is said aloud.
const overStage = createPiece(
  () => import('./OverStage'),
  (module) => module.default,
);

/** The stage: the aircraft on its mat, seen freely or in three registered elevations. Fills the box it is given. */
export function Stage({ trouble: Trouble }: { readonly trouble: StageTroubleView }) {
  const box = useRef<HTMLDivElement>(null);
  const picture = useRef<HTMLDivElement>(null);
  const readout = useRef<HTMLDivElement>(null);
  const labels = useRef<LabelPlace>({ words: null, leaders: null, neutralPoint: null });
  const handles = useRef<HandlePlace>(noHandles());
  useStageBox(box);
  const onDrag = useCallback((reading: string | null) => {
    if (readout.current) readout.current.textContent = reading ?? '';
  }, []);
  const OverStage = useScenePiece(overStage, 'The stage’s own switches');
  const [failure, setFailure] = useState<StageFailure | null>(null);
  /** Counts the canvases: one that failed is not used again. */
  const [canvasNumber, setCanvasNumber] = useState(0);
  const drawAnew = () => {
    setFailure(null);
    setCanvasNumber(canvasNumber + 1);
  };
  return (
    <div ref={box} className="stage-box">
      <div ref={picture} className="stage-canvas" role="img" aria-label="The aircraft on its mat">
        <StageCanvas key={canvasNumber} onFailure={setFailure}>
          <StageScene box={box} labels={labels} handles={handles} onDrag={onDrag} />
        </StageCanvas>
      </div>
      <Labels place={labels} />
      <div ref={readout} className="stage-readout" aria-hidden="true" />
      {OverStage && <OverStage picture={picture} handles={handles} />}
      {failure && (
        <div className="stage-trouble">
          <Trouble failure={failure} onRetry={drawAnew} />
        </div>
      )}
    </div>
  );
}
