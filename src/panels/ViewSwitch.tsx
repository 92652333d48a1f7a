import { useId } from 'react';
import { useBench, useView } from '../store/react';
import type { View } from '../store/viewStore';

export const views: readonly { readonly view: View; readonly label: string }[] = [
  { view: 'side', label: 'Side' },
  { view: 'top', label: 'Top' },
  { view: 'front', label: 'Front' },
  { view: 'free', label: 'Free' },
];

/** Which way the stage is looked at. */
export function ViewSwitch() {
  const bench = useBench();
  const group = useId();
  const current = useView((state) => state.view);
  return (
    <div className="view-switch" role="radiogroup" aria-label="View">
      {views.map(({ view, label }) => (
        <label key={view}>
          <input
            type="radio"
            name={group}
            value={view}
            checked={view === current}
            onChange={() => bench.view.setState({ view })}
          />
          {label}
        </label>
      ))}
    </div>
  );
}
