import './weigh.css';
import './entry.css';
import './pictures/pictures.css';
import './kitchen.css';
import { useState } from 'react';
import { lastWeighIn, weighInById, weighInsOf } from '../../model/weigh/weighIns';
import { useCommitted } from '../../store/react';
import { Boundary } from '../trouble/Boundary';
import { Before } from './Before';
import { Drift } from './Drift';
import { Entry } from './Entry';
import { Kitchen } from './Kitchen';
import { Log } from './Log';
import { Verdict } from './Verdict';

const sheets = [
  { id: 'whole', label: 'The whole aircraft' },
  { id: 'parts', label: 'Part by part' },
] as const;

/** Where the list of what is aboard is held against the scales. */
export function WeighIn() {
  const [sheet, setSheet] = useState<(typeof sheets)[number]['id']>('whole');
  return (
    <main className="place weigh" data-testid="weigh-in">
      <header className="weigh-head">
        <h2>Weigh-in</h2>
        <fieldset className="weigh-sheets">
          <legend className="unseen">What to weigh</legend>
          {sheets.map(({ id, label }) => (
            <label key={id}>
              <input type="radio" name="weigh-sheet" checked={sheet === id} onChange={() => setSheet(id)} />
              {label}
            </label>
          ))}
        </fieldset>
        <Before />
      </header>
      {sheet === 'whole' ? <Whole /> : <Kitchen />}
    </main>
  );
}

function Whole() {
  const [chosen, setChosen] = useState<string | null>(null);
  const count = useCommitted((aircraft) => weighInsOf(aircraft).length);
  const id = useCommitted((aircraft) => (weighInById(aircraft, chosen) ?? lastWeighIn(aircraft))?.id ?? null);
  return (
    <div className="weigh-whole" data-empty={count === 0 || undefined}>
      <div className="weigh-days">
        <Log chosen={id} onChoose={setChosen} />
        <Drift />
      </div>
      {id !== null && (
        <Boundary place="The weigh-in">
          <Entry key={id} id={id} />
          <Verdict key={`${id} verdict`} id={id} />
        </Boundary>
      )}
    </div>
  );
}
