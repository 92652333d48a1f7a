import { positionOf } from '../../model/airframe/loadSwitches';
import { useBench, useView } from '../../store/react';
import { setSwitch } from '../../store/viewStore';

/** The switches themselves. */
export function SwitchSet({ switches }: { readonly switches: readonly Parameters<typeof positionOf>[0][] }) {
  const bench = useBench();
  const positions = useView((view) => view.positions);
  return (
    <div className="switch-set">
      {switches.map((loadSwitch) => {
        const chosen = positionOf(loadSwitch, positions);
        return (
          <fieldset key={loadSwitch.id}>
            <legend>{loadSwitch.name}</legend>
            {loadSwitch.positions.map((position) => (
              <button
                key={position.id}
                type="button"
                aria-pressed={position === chosen}
                onClick={() => setSwitch(bench.view, loadSwitch.id, position.id)}
              >
                {position.name}
              </button>
            ))}
          </fieldset>
        );
      })}
    </div>
  );
}
