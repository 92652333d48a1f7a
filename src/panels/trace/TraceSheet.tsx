import './trace.css';
import { useContext, useEffect, useRef } from 'react';
import { useBench, useTrace, useView } from '../../store/react';
import { Refusal } from '../fields/EditButton';
import { FilesContext } from '../filesContext';
import { Icon } from '../icons';
import { TraceChoices } from './TraceChoices';
import { TraceStepWords } from './TraceStepWords';

const VIEWS = { side: 'the side view', top: 'the top view', front: 'the front view' } as const;

/** A drawing under an elevation: chosen, scaled, squared, held. While a step is asked for, only that is said. */
export function TraceSheet() {
  const { trace } = useBench();
  const files = useContext(FilesContext);
  const view = useView((state) => state.view);
  const step = useTrace(({ api }) => api.getState().step);
  const fault = useTrace(({ api }) => api.getState().fault);
  const laid = useTrace((store) => store.shown());
  const empty = laid === null;
  const sheet = useRef<HTMLElement>(null);
  // Where the focus goes when the sheet opens, and when a step or a button that had it is gone.
  useEffect(() => {
    if (step === null) sheet.current?.focus({ preventScroll: true });
  }, [step, empty]);
  const choose = () => void files?.openPicture();
  return (
    <section
      ref={sheet}
      tabIndex={-1}
      className="trace-sheet"
      data-testid="trace"
      data-step={step}
      aria-label="Drawing under the view"
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || event.defaultPrevented) return;
        event.preventDefault();
        event.stopPropagation();
        if (step) trace.begin(null);
        else trace.setOpen(false);
      }}
    >
      {step && laid ? (
        <TraceStepWords step={step} laid={laid} />
      ) : (
        <>
          <header>
            <h2>Drawing under {view === 'free' ? 'a view' : VIEWS[view]}</h2>
            <button
              type="button"
              className="button bare"
              aria-label="Close"
              onClick={() => trace.setOpen(false)}
            >
              <Icon name="cross" />
            </button>
          </header>
          {view === 'free' && (
            <p className="hint">A drawing lies under Side, Top or Front: choose one of them.</p>
          )}
          {view !== 'free' && !laid && (
            <>
              <button type="button" className="button" onClick={choose}>
                Choose a picture…
              </button>
              <p className="hint">
                Or drop one on the page: a photo or a plan as PNG, JPEG or WebP. It stays on this machine. SVG
                is not taken, for it can carry scripts.
              </p>
            </>
          )}
          {laid && <TraceChoices laid={laid} onChoose={choose} />}
        </>
      )}
      <Refusal fault={fault} />
    </section>
  );
}
