import { useMemo, useState } from 'react';
import { removeItem } from '../../model/document/edit';
import type { Aircraft, Part } from '../../model/document/types';
import { ATTITUDES, downOf } from '../../model/loads/attitude';
import { defaultRule, usualMarginMm } from '../../model/place/placeSettings';
import { variantsOf } from '../../model/place/variants';
import { statedForWords } from '../../model/words/statedForWords';
import { ballastG } from '../../model/words/verdict';
import { useBench, useCommitted, useKeptBand } from '../../store/react';
import { useReadings } from '../readings';
import { BallastRooms } from './BallastRooms';
import { MayMove } from './MayMove';
import { OwnMeasure } from './OwnMeasure';
import { Progress } from './Progress';
import { Result } from './Result';
import { useSearch } from './useSearch';
import type { Wishes } from './wishes';

const certainties = [
  { value: '', label: 'As the figures say' },
  { value: '0.9', label: 'Be 90 % sure' },
  { value: '0.95', label: 'Be 95 % sure' },
  { value: '0.99', label: 'Be 99 % sure' },
] as const;

const looseBallast = ({ parts }: Aircraft): Part[] =>
  parts.filter(({ role, locked }) => role === 'ballast' && locked !== true);

/** The attitudes that a flight passes through, beside the one on the bench. */
const ALSO_DOWN = ATTITUDES.map(downOf);

/** Choose what may move, press one button, read one sentence. */
export function ArrangeTab() {
  const bench = useBench();
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const band = useKeptBand();
  const [wishes, setWishes] = useState<Wishes>({ rules: {}, instead: {} });
  const [certainty, setCertainty] = useState('');
  const [takeOut, setTakeOut] = useState(true);
  const [everyAttitude, setEveryAttitude] = useState(false);
  const usualMm = useMemo(
    () => (band ? usualMarginMm(aircraft, band, bench.view.getState().down) : 0),
    [aircraft, band, bench],
  );
  const [askedMm, setAskedMm] = useState<number | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const wantedMm = askedMm ?? usualMm;
  const { search, stale, run, cancel, clear } = useSearch();
  const start = (rules = wishes.rules) => {
    const { committed } = bench.document.api.getState();
    const { down } = bench.view.getState();
    const emptied = takeOut ? looseBallast(committed) : [];
    const empty = emptied.reduce((left, { id }) => removeItem(left, id), committed);
    const variants = variantsOf(empty, wishes.instead);
    setFault('fault' in variants ? variants.fault : null);
    if ('fault' in variants) return;
    void run({
      variants,
      settings: {
        down,
        rules,
        band,
        emptied,
        wantedMarginMm: wantedMm,
        ...(everyAttitude ? { alsoDown: ALSO_DOWN } : {}),
      },
      probability: certainty === '' ? null : Number(certainty),
    });
  };
  if (search.phase === 'running')
    return <Progress search={search} stale={stale} onCancel={cancel} onAgain={() => start()} />;
  if (search.phase === 'done') {
    return (
      <Result
        search={search}
        stale={stale}
        onPutAway={clear}
        onAgain={() => start()}
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
  const moving = [...aircraft.parts, ...aircraft.tanks].filter(
    (item) => (wishes.rules[item.id] ?? defaultRule(aircraft, item)).by !== 'stay',
  );
  const aboardG = ballastG(aircraft);
  const differs = statedForWords(aircraft);
  const sentence = fault ?? (search.phase === 'failed' ? search.sentence : null);
  return (
    <>
      <p>
        Finds the places that keep the margin and need the least ballast, in every load state that flies and
        over the whole burn, and proves it.
      </p>
      {differs && <p className="hint">{differs}</p>}
      {sentence && (
        <p className="arrange-fault" role="alert">
          {sentence}
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
      <BallastPlaces />
      {band && (
        <OwnMeasure
          label="Margin inside the limits"
          quantity="length"
          value={wantedMm}
          onChange={(mm) => setAskedMm(Math.max(0, mm))}
        />
      )}
      {aboardG > 0 && (
        <label className="tick">
          <input type="checkbox" checked={takeOut} onChange={(event) => setTakeOut(event.target.checked)} />
          Take out the {say.mass(aboardG)} of ballast aboard first
        </label>
      )}
      {aircraft.tanks.length > 0 && (
        <label className="tick">
          <input
            type="checkbox"
            checked={everyAttitude}
            onChange={(event) => setEveryAttitude(event.target.checked)}
          />
          In every attitude of a flight
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

/** The lists of where ballast may go and may not, drawn when they are opened. */
function BallastPlaces() {
  const [open, setOpen] = useState(false);
  return (
    <details className="arrange-more" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Where ballast may go, and may not</summary>
      {open && <BallastRooms />}
    </details>
  );
}
