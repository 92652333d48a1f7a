import { lazy, Suspense, useCallback, useRef } from 'react';
import { useAxis, useLive, useView } from '../store/react';
import { useStageBox } from './frame/useStageBox';
import { stageSummary } from './gestures/stageReadings';
import { useAnnounced } from './gestures/useAnnounced';
import { type LabelPlace, Labels } from './marks/Labels';
import { StageCanvas } from './StageCanvas';
import { StageScene } from './StageScene';
import './stage.css';

const StageBar = lazy(() => import('./StageBar'));

/** The stage: the aircraft on its mat, seen freely or in three registered elevations. Fills the box it is given. */
export function Stage() {
  const box = useRef<HTMLDivElement>(null);
  const picture = useRef<HTMLDivElement>(null);
  const readout = useRef<HTMLDivElement>(null);
  const spoken = useRef<HTMLDivElement>(null);
  const labels = useRef<LabelPlace>({ words: null, leaders: null, neutralPoint: null });
  useStageBox(box);
  const onDrag = useCallback((reading: string | null) => {
    if (readout.current) readout.current.textContent = reading ?? '';
  }, []);
  useLive((bench) => {
    // What a screen reader would read of the picture follows once the hand rests: with each move it is of no use.
    if (bench.document.api.getState().preview) return;
    const summary = stageSummary(bench);
    if (picture.current?.getAttribute('aria-label') !== summary) {
      picture.current?.setAttribute('aria-label', summary);
    }
  });
  useAnnounced(spoken);
  const top = useView(({ view }) => view === 'top');
  const stretch = useAxis(({ spanStretch }) => spanStretch);

  return (
    <div ref={box} className="stage-box">
      <div ref={picture} className="stage-canvas" role="img">
        <StageCanvas>
          <StageScene box={box} labels={labels} onDrag={onDrag} />
        </StageCanvas>
      </div>
      <Labels place={labels} />
      {top && stretch > 1.005 && (
        <p className="stage-note">Span drawn at {Math.round(100 / stretch)} % of the length’s scale</p>
      )}
      <div ref={readout} className="stage-readout" aria-hidden="true" />
      <Suspense fallback={null}>
        <StageBar />
      </Suspense>
      <div ref={spoken} className="unseen" role="status" aria-live="polite" data-testid="stage-said" />
    </div>
  );
}
