import { useState } from 'react';
import { scaledTrace } from '../../interaction/trace';
import type { Laid } from '../../model/document/traces';
import { formatLength, parseQuantity } from '../../model/units';
import { useBench, useTrace, useView } from '../../store/react';
import type { TraceStep } from '../../store/traceStore';
import { TypedLine } from '../fields/TypedLine';

interface TraceStepProps {
  readonly step: TraceStep;
  readonly laid: Laid;
}

/** What the hand is asked for, in words, and the way out of it. */
export function TraceStepWords({ step, laid }: TraceStepProps) {
  const { trace } = useBench();
  const points = useTrace(({ api }) => api.getState().points);
  const both = step === 'length' && points.length === 2;
  return (
    <>
      <p role="status">{both ? 'Type its true length.' : asked(step, points.length)}</p>
      {both && <TypedLength laid={laid} />}
      <div className="trace-row">
        {points.length > 0 && (
          <button type="button" className="button" onClick={() => trace.begin(step)}>
            Point anew
          </button>
        )}
        <button type="button" className="button" onClick={() => trace.begin(null)}>
          {step === 'move' ? 'Done' : 'Leave'}
        </button>
      </div>
    </>
  );
}

function asked(step: TraceStep, count: number): string {
  switch (step) {
    case 'length':
      return count === 0
        ? 'Click both ends of a length that you know. The longer it is, the better.'
        : 'Now its other end.';
    case 'level':
      return count === 0
        ? 'Click the left end of a line that is to be level.'
        : 'Now its right end; the drawing turns until the line is level.';
    case 'move':
      return 'Drag the drawing, or move it with the arrow keys: 1 mm, with Shift 10 mm.';
  }
}

function TypedLength({ laid }: { readonly laid: Laid }) {
  const { trace } = useBench();
  const units = useView((state) => state.units);
  const points = useTrace(({ api }) => api.getState().points);
  const [text, setText] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const [a, b] = points;
  if (!a || !b) return null;
  const take = () => {
    const read = parseQuantity(text, { quantity: 'length', system: units });
    if (!read.ok) return setFault(read.sentence);
    const scaled = scaledTrace(laid.trace, [a, b], read.value);
    if (typeof scaled === 'string') return setFault(scaled);
    if (trace.put('Scale the drawing', scaled)) trace.begin(null);
  };
  const nowMm = Math.hypot(b[0] - a[0], b[1] - a[1]);
  return (
    <form
      className="trace-length"
      onSubmit={(event) => {
        event.preventDefault();
        take();
      }}
    >
      <TypedLine
        label="Its length"
        autoFocus
        value={text}
        placeholder={`now ${formatLength(nowMm, units)}`}
        fault={fault}
        onChange={(event) => {
          setText(event.target.value);
          setFault(null);
        }}
      />
      <button type="submit" className="button strong">
        Scale to it
      </button>
    </form>
  );
}
