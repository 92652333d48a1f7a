import { useState } from 'react';
import { type PackWay, packWays } from '../../model/advice/packWays';
import type { Aircraft } from '../../model/document/types';
import { behindWords } from '../../model/words/behindWords';
import { headAndCause } from '../../model/words/headline';
import { lastsWords } from '../../model/words/powerWords';
import { useBench, useCommitted } from '../../store/react';
import { type Readings, useReadings } from '../readings';

/** The packs as they are beside the other ways that the wiring allows, each judged whole; worked out when asked for. */
export function Ways() {
  const bench = useBench();
  const aircraft = useCommitted((committed) => committed);
  const [asked, setAsked] = useState<{ readonly of: Aircraft; readonly ways: readonly PackWay[] } | null>(
    null,
  );
  const compare = () => {
    const { estimate, estimateFresh } = bench.balance.get();
    const given = { down: bench.view.getState().down, estimate: estimateFresh ? estimate : null };
    setAsked({ of: aircraft, ways: packWays(aircraft, given) });
  };
  const fresh = asked?.of === aircraft;
  return (
    <section className="power-ways" aria-label="One pack or two">
      <h3>One pack or two</h3>
      {asked && fresh && asked.ways.length > 1 ? (
        <WaysTable ways={asked.ways} />
      ) : (
        <p>
          {asked && fresh
            ? 'The wiring allows no other way: no pack carries control alone, and there is nothing to put together.'
            : 'Holds the packs as they are against one pack for all, and against two where one carries control alone.'}{' '}
          <button type="button" className="button" onClick={compare}>
            Compare
          </button>
        </p>
      )}
    </section>
  );
}

function WaysTable({ ways }: { readonly ways: readonly PackWay[] }) {
  const { document } = useBench();
  const say = useReadings();
  return (
    <div className="power-scroll">
      <table>
        <thead>
          <tr>
            <th scope="col">Way</th>
            <th scope="col">Ready to fly</th>
            <th scope="col">CG full, dry</th>
            <th scope="col">Ballast it asks for</th>
            <th scope="col">First pack lasts</th>
            <th scope="col">Fails together</th>
            <th scope="col">Verdict</th>
            <td />
          </tr>
        </thead>
        <tbody>
          {ways.map((way, at) => (
            <tr key={way.id}>
              <th scope="row">{way.name}</th>
              <td className="figure">{say.mass(way.massG)}</td>
              <td className="figure">
                {way.cgMm ? `${say.stationFine(way.cgMm.full)}, ${say.stationFine(way.cgMm.dry)}` : '–'}
              </td>
              <td className="figure">{ballastWords(way, say)}</td>
              <td className="figure">{way.lastsS === null ? '–' : lastsWords(way.lastsS)}</td>
              <td>{together(way)}</td>
              <td>
                {headAndCause(way.aircraft, way.judgement, say).headline}
                {behindWords(way.judgement, say).map((words) => (
                  <small key={words}>{words}</small>
                ))}
              </td>
              <td>
                {at > 0 && (
                  <button
                    type="button"
                    className="button"
                    onClick={() => document.commit(way.name, way.aircraft)}
                  >
                    Take this way
                  </button>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="hint">
        Masses of packs that are not aboard are typical for their kind: an estimate. Ballast is lead near one
        end of the fuselage, by the limits of the band alone; Arrange looks for a better answer.
      </p>
    </div>
  );
}

function ballastWords({ ballast }: PackWay, say: Readings): string {
  return typeof ballast === 'string' ? ballast : `${say.mass(ballast.massG)} in the ${ballast.at}`;
}

function together({ falls }: PackWay): string {
  const both = falls.filter(({ control, engine }) => control && engine);
  if (both.length > 0) return `control and engine, with ${both.map(({ pack }) => pack.name).join(', ')}`;
  const alone = falls.filter(({ control }) => control);
  return alone.length > 0 ? `control, with ${alone.map(({ pack }) => pack.name).join(', ')}` : 'nothing';
}
