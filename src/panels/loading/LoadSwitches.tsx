import './loading.css';
import { positionOf, switchesOf } from '../../model/airframe/loadSwitches';
import { feedFindings } from '../../model/loads/feedFindings';
import { useBench, useCommitted, useView } from '../../store/react';
import { setSwitch } from '../../store/viewStore';

/** What is aboard and how the undercarriage stands: a switch each. Nothing on an aircraft without. */
export function LoadSwitches() {
  const bench = useBench();
  const key = useCommitted((aircraft) => JSON.stringify(switchesOf(aircraft)));
  const positions = useView((view) => view.positions);
  const findings = useCommitted((aircraft) =>
    feedFindings(aircraft)
      .map(({ sentence }) => sentence)
      .join('\n'),
  );
  const switches = switchesOf(bench.document.api.getState().committed);
  if (key === '[]') return null;
  return (
    <div className="load-switches" data-testid="switches">
      {switches.map((one) => {
        const chosen = positionOf(one, positions);
        return (
          <fieldset key={one.id}>
            <legend>{one.name}</legend>
            {one.positions.map((position) => (
              <button
                key={position.id}
                type="button"
                aria-pressed={position === chosen}
                onClick={() => setSwitch(bench.view, one.id, position.id)}
              >
                {position.name}
              </button>
            ))}
          </fieldset>
        );
      })}
      {findings !== '' && (
        <p className="feed-findings" role="status">
          {findings}
        </p>
      )}
    </div>
  );
}
