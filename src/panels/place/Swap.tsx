import { useMemo, useState } from 'react';
import { aircraftExtent } from '../../model/airframe/extent';
import { type ShelfPart, shelf } from '../../model/airframe/shelf';
import type { Aircraft } from '../../model/document/types';
import { judgeFully } from '../../model/judgement/judgeFully';
import { fitRefusals } from '../../model/place/fitRefusals';
import { swapPart } from '../../model/place/usefulMass';
import { verdict } from '../../model/words/verdict';
import { useBench, useCommitted, useKeptBand } from '../../store/react';
import { EditButton } from '../fields/EditButton';
import { useReadings } from '../readings';

/** One thing for another from the shelf where it stands, with both verdicts side by side. */
export function Swap() {
  const bench = useBench();
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const selected = bench.view.getState().selectedId;
  const [chosen, setChosen] = useState(selected ?? '');
  const [shelfName, setShelfName] = useState('');
  const part =
    aircraft.parts.find(({ id }) => id === chosen) ??
    aircraft.parts.find(({ role }) => role === 'energy') ??
    aircraft.parts[0];
  const { down, positions } = bench.view.getState();
  const band = useKeptBand();
  const like = shelf.filter(({ role }) => role === part?.role);
  const other = like.find(({ name }) => name === shelfName) ?? nearest(like, part?.massG ?? 0);
  const swap = useMemo(
    () => (part && other ? swapPart(aircraft, part.id, other, { down, band }) : null),
    [aircraft, part, other, down, band],
  );
  const clashes = useMemo(
    () => (swap ? [...new Set(fitRefusals(aircraft, swap.aircraft).map(({ sentence }) => sentence))] : []),
    [aircraft, swap],
  );
  const { estimate, fresh } = bench.stability.get();
  const said = (candidate: Aircraft) =>
    verdict(candidate, judgeFully(candidate, { down, positions, estimate, estimateFresh: fresh }), say);
  return (
    <section className="swap">
      <h3>Another one in its place</h3>
      <label className="arrange-choice">
        <span>Instead of</span>
        <select value={part?.id ?? ''} onChange={({ target }) => setChosen(target.value)}>
          {aircraft.parts.map(({ id, name, massG }) => (
            <option key={id} value={id}>
              {name}, {say.mass(massG)}
            </option>
          ))}
        </select>
      </label>
      <label className="arrange-choice">
        <span>From the shelf</span>
        <select value={other?.name ?? ''} onChange={({ target }) => setShelfName(target.value)}>
          {like.map(({ name, massG }) => (
            <option key={name} value={name}>
              {name}, {say.mass(massG)}
            </option>
          ))}
        </select>
      </label>
      {part && other && swap ? (
        <>
          <div className="both">
            <Side title="As it is" marginMm={swap.beforeMm} {...said(aircraft)} />
            <Side title={other.name} marginMm={swap.afterMm} {...said(swap.aircraft)} />
          </div>
          {clashes.length > 0 && (
            <div className="swap-clashes" role="status">
              <p>It does not fit where {part.name} is:</p>
              <ul className="arrange-notes">
                {clashes.map((sentence) => (
                  <li key={sentence}>{sentence}</li>
                ))}
              </ul>
            </div>
          )}
          <p>{bestWords(swap.bestMm)}</p>
          <div className="arrange-buttons">
            <EditButton step={`Swap ${part.name}`} edit={() => swap.aircraft}>
              Put it in
            </EditButton>
          </div>
        </>
      ) : (
        <p className="hint">There is nothing like it on the shelf, or no band to hold it against.</p>
      )}
    </section>
  );

  function bestWords(bestMm: number | null): string {
    const { minMm, maxMm } = aircraftExtent(aircraft);
    if (bestMm === null || bestMm < minMm[0] || bestMm > maxMm[0]) {
      return 'No place aboard for it alone would mend the balance.';
    }
    return Math.abs(bestMm - (part?.positionMm[0] ?? 0)) > 1
      ? `It would balance best at station ${say.station(bestMm)}.`
      : 'Where it is, it balances best.';
  }
}

/** The one whose mass is nearest without being the same, the heavier of two as near. */
const nearest = (like: readonly ShelfPart[], massG: number): ShelfPart | undefined =>
  like
    .filter((each) => each.massG !== massG)
    .sort((a, b) => Math.abs(a.massG - massG) - Math.abs(b.massG - massG) || b.massG - a.massG)[0];

interface SideProps {
  readonly title: string;
  readonly marginMm: number;
  readonly tone: string;
  readonly headline: string;
}

function Side({ title, marginMm, tone, headline }: SideProps) {
  const say = useReadings();
  return (
    <div data-tone={tone}>
      <h4>{title}</h4>
      <p>{headline}</p>
      <p className="figure">{say.offset(marginMm)} margin</p>
    </div>
  );
}
