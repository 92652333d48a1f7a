import { lazy, Suspense, useCallback, useRef } from 'react';
import { useAxis, useView } from '../store/react';
import { useStageBox } from './frame/useStageBox';
import { type LabelPlace, Labels } from './marks/Labels';
import { StageCanvas } from './StageCanvas';
import { StageScene } from './StageScene';
import './stage.css';

const StageBar = lazy(() => import('./StageBar'));
const StageVoice = lazy(() => import('./StageVoice'));

/** The stage: the aircraft on its mat, seen freely or in three registered elevations. Fills the box it is given. */
export function Stage() {
  const box = useRef<HTMLDivElement>(null);
  const picture = useRef<HTMLDivElement>(null);
  const readout = useRef<HTMLDivElement>(null);
  const labels = useRef<LabelPlace>({ words: null, leaders: null, neutralPoint: null });
  useStageBox(box);
  const onDrag = useCallback((reading: string | null) => {
    if (readout.current) readout.current.textContent = reading ?? '';
  }, []);
  const top = useView(({ view }) => view === 'top');
  const stretch = useAxis(({ spanStretch }) => spanStretch);

  return (
    <div ref={box} className="stage-box">
      <div ref={picture} className="stage-canvas" role="img" aria-label="The aircraft on its mat">
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
        <StageVoice picture={picture} />
      </Suspense>
    </div>
  );
}
