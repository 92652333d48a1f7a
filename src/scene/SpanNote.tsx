import { useAxis, useBench, useView } from '../store/react';

/** From above, where a wing is too wide for the picture at the length's scale: what is done about it, and the other way. */
export function SpanNote() {
  const bench = useBench();
  const top = useView(({ view }) => view === 'top');
  const wholeSpan = useView((state) => state.wholeSpan);
  const stretch = useAxis(({ wholeSpanStretch }) => wholeSpanStretch);
  if (!top || stretch <= 1.005) return null;
  return (
    <div className="stage-note">
      <p>
        {wholeSpan
          ? `Span drawn at ${Math.round(100 / stretch)} % of the length’s scale`
          : 'True to scale; the tips lie beyond the picture'}
      </p>
      <button type="button" onClick={() => bench.view.setState({ wholeSpan: !wholeSpan })}>
        {wholeSpan ? 'True to scale' : 'Whole span'}
      </button>
    </div>
  );
}
