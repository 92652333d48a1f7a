import './sources.css';
import type { RestsOn } from '../../model/balance/massOnScales';

/** How much of the mark is filled: the surer, the fuller. */
const FILLED: Readonly<Record<RestsOn, number>> = {
  weighed: 1,
  measured: 0.75,
  liquid: 0.75,
  'not said': 0.5,
  typical: 0.5,
  assumed: 0.25,
  unknown: 0,
};

/** A small level that is the fuller, the surer a figure is known; a question where it is not known. */
export function SourceMark({ of }: { readonly of: RestsOn }) {
  const heightPx = 10 * FILLED[of];
  return (
    <svg className="source-mark" data-source={of} viewBox="0 0 12 12" aria-hidden="true">
      <rect x="1" y="1" width="10" height="10" rx="2" className="source-frame" />
      {heightPx > 0 && (
        <rect x="1" y={11 - heightPx} width="10" height={heightPx} rx="1.5" className="source-level" />
      )}
      {of === 'unknown' && (
        <text x="6" y="9.4" textAnchor="middle" className="source-question">
          ?
        </text>
      )}
    </svg>
  );
}
