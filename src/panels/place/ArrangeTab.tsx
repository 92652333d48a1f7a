import { useState } from 'react';
import { removeItem } from '../../model/document/edit';
import type { Aircraft } from '../../model/document/types';
import { defaultRule } from '../../model/place/placeSettings';
import { ballastG } from '../../model/words/verdict';
import { useBench, useCommitted } from '../../store/react';
import { useReadings } from '../readings';
import { MayMove } from './MayMove';
import { Progress } from './Progress';
import { Result } from './Result';
import { Spots } from './Spots';
import { useSearch } from './useSearch';
import type { Wishes } from './wishes';

const certainties = [
  { value: '', label: 'As the figures say' },
  { value: '0.9', label: 'Be 90 % sure' },
  { value: '0.95', label: 'Be 95 % sure' },
  { value: '0.99', label: 'Be 99 % sure' },
] as const;

const withoutBallast = (aircraft: Aircraft): Aircraft =>
  aircraft.parts
    .filter(({ role, locked }) => role === 'ballast' && locked !== true)
    .reduce((one, { id }) => removeItem(one, id), aircraft);

/** Choose what may move, press one button, read one sentence. */
export function ArrangeTab() {
  const bench = useBench();
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const [wishes, setWishes] = useState<Wishes>({ rules: {}, mayTurn: [] });
  const [certainty, setCertainty] = useState('');
  const [takeOut, setTakeOut] = useState(true);
  const { search, run, cancel, clear } = useSearch();
  const start = (rules = wishes.rules) => {
    const { committed } = bench.document.api.getState();
    void run({
      start: takeOut ? withoutBallast(committed) : committed,
      settings: {
        down: bench.view.getState().down,
        rules,
        mayTurn: wishes.mayTurn,
        band: bench.balance.get().band,
      },
      probability: certainty === '' ? null : Number(certainty),
    });
  };
  if (search.phase === 'running') return <Progress search={search} onCancel={cancel} />;
  if (search.phase === 'done') {
    return (
      <Result
        search={search}
        onPutAway={clear}
        onRelaxed={(partIds) => {
          const rules = Object.fromEntries(
            Object.entries(wishes.rules).filter(([id]) => !partIds.includes(id)),
          );
          setWishes({ ...wishes, rules });
          start(rules);
        }}
      />
    );
  }
  const moving = aircraft.parts.filter(
    (part) => (wishes.rules[part.id] ?? defaultRule(aircraft, part)).by !== 'stay',
  );
  const aboardG = ballastG(aircraft);
  return (
    <>
      <p>
        Finds the places that need the least ballast, in every load state and over the whole burn, and proves
        it.
      </p>
      {search.phase === 'failed' && (
        <p className="arrange-fault" role="alert">
          {search.sentence}
        </p>
      )}
      <div className="arrange-buttons">
        <button type="button" className="button strong start" onClick={() => start()}>
          Start
        </button>
      </div>
      <details className="arrange-more">
        <summary>
          What may move <span className="count">{moving.length}</span>
        </summary>
        <MayMove wishes={wishes} onChange={setWishes} />
      </details>
      <details className="arrange-more">
        <summary>Where ballast may go</summary>
        <Spots />
      </details>
      {aboardG > 0 && (
        <label className="tick">
          <input type="checkbox" checked={takeOut} onChange={(event) => setTakeOut(event.target.checked)} />
          Take out the {say.mass(aboardG)} of ballast aboard first
        </label>
      )}
      <label className="arrange-choice">
        <span>How sure</span>
        <select value={certainty} onChange={(event) => setCertainty(event.target.value)}>
          {certainties.map(({ value, label }) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      </label>
    </>
  );
}
