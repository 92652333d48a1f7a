import { useEffect, useId, useRef } from 'react';
import { mirroredTrace } from '../../interaction/trace';
import { headOf, kiloBytesOf, type Laid } from '../../model/document/traces';
import { formatLength } from '../../model/units';
import { useBench, useTrace, useView } from '../../store/react';
import type { TraceStep } from '../../store/traceStore';

const STEPS: readonly { readonly step: TraceStep; readonly label: string; readonly does: string }[] = [
  { step: 'length', label: 'Scale…', does: 'By a length that you know' },
  { step: 'level', label: 'Square…', does: 'By a line that is to be level' },
  { step: 'move', label: 'Move…', does: 'By hand or arrow keys' },
];

interface TraceChoicesProps {
  readonly laid: Laid;
  readonly onChoose: () => void;
}

/** All that can be done with a drawing that lies there. */
export function TraceChoices({ laid, onChoose }: TraceChoicesProps) {
  const { trace: store } = useBench();
  const units = useView((state) => state.units);
  const kept = useTrace((all) => all.isKept());
  const { trace, picture } = laid;
  const locked = trace.locked === true;
  const size = headOf(picture);
  const unseen = useView(({ attitude, looking }) =>
    unseenWords(attitude.pitchDeg === 0 && attitude.rollDeg === 0, looking.quiet),
  );
  const put = (label: string, change: Partial<Laid['trace']>) => store.put(label, { ...trace, ...change });
  return (
    <>
      {unseen && <p className="hint">{unseen}</p>}
      <div className="trace-row">
        {STEPS.map(({ step, label, does }) => (
          <button
            key={step}
            type="button"
            className="button"
            title={does}
            disabled={locked || unseen !== null}
            onClick={() => store.begin(step)}
          >
            {label}
          </button>
        ))}
        <button
          type="button"
          className="button"
          disabled={locked || !size}
          onClick={() => size && store.put('Mirror the drawing', mirroredTrace(trace, size))}
        >
          Mirror
        </button>
      </div>
      {size && (
        <p className="hint">
          It is {formatLength(size.widthPx * trace.mmPerPx, units)} wide as it lies, a pixel{' '}
          {formatLength(trace.mmPerPx, units, { fine: true })}.
        </p>
      )}
      <Opacity laid={laid} />
      <label className="trace-tick">
        <input
          type="checkbox"
          checked={locked}
          onChange={({ target }) =>
            put(target.checked ? 'Hold the drawing' : 'Let go of the drawing', { locked: target.checked })
          }
        />
        Hold it where it lies
      </label>
      <label className="trace-tick">
        <input type="checkbox" checked={kept} onChange={({ target }) => store.keep(target.checked)} />
        Keep it in the file: {kiloBytesOf(picture)} kB
      </label>
      {!kept && <p className="hint">Not in the file: this tab keeps it while it is open.</p>}
      <div className="trace-row">
        <button type="button" className="button" disabled={locked} onClick={onChoose}>
          Another picture…
        </button>
        <button type="button" className="button" onClick={store.remove}>
          Remove
        </button>
      </div>
    </>
  );
}

/** Why it is not seen just now; null where it is. */
const unseenWords = (level: boolean, quiet: boolean): string | null =>
  quiet
    ? 'It is hidden while the stage is quiet.'
    : level
      ? null
      : 'It is hidden while the aircraft is held otherwise than level.';

/** Followed by the stage while it is slid; one step once it is let go. */
function Opacity({ laid }: { readonly laid: Laid }) {
  const { trace: store } = useBench();
  const id = useId();
  const slider = useRef<HTMLInputElement>(null);
  const { opacity } = laid.trace;
  useEffect(() => {
    const input = slider.current;
    // React hears only of the sliding; the browser’s own event tells when it is let go.
    const letGo = () => {
      const now = store.shown();
      if (now) store.put('Opacity of the drawing', now.trace);
    };
    input?.addEventListener('change', letGo);
    return () => input?.removeEventListener('change', letGo);
  }, [store]);
  return (
    <div className="trace-opacity">
      <label htmlFor={id}>Opacity</label>
      <input
        ref={slider}
        id={id}
        type="range"
        min={5}
        max={100}
        step={5}
        value={Math.round(opacity * 100)}
        aria-valuetext={`${Math.round(opacity * 100)} %`}
        onInput={({ currentTarget }) =>
          store.preview({ ...laid.trace, opacity: Number(currentTarget.value) / 100 })
        }
        onChange={() => {}}
      />
    </div>
  );
}
