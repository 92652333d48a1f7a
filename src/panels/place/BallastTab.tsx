import { useMemo, useState } from 'react';
import type { Vec3 } from '../../engine/geometry/types';
import { massRange, spotEffects } from '../../engine/place/massRange';
import { shownText } from '../../model/document/names';
import { usualSpots } from '../../model/place/ballastPlaces';
import { aircraftCases } from '../../model/place/loadCases';
import type { PlaceRule } from '../../model/place/placeSettings';
import { type UsefulMass, usefulMass } from '../../model/place/usefulMass';
import { useBench, useCommitted, useKeptBand, useVerdict } from '../../store/react';
import { type Readings, useReadings } from '../readings';
import { OwnMeasure } from './OwnMeasure';
import { Progress } from './Progress';
import { Result } from './Result';
import { useSearch } from './useSearch';

const STAY: PlaceRule = { by: 'stay' };
/** To start the comparison with, g. */
const FIRST_G = 20;

/** Useful mass first; then where lead does the most, and the least of it with nothing moved. */
export function BallastTab() {
  const bench = useBench();
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const band = useKeptBand();
  const [massG, setMassG] = useState(FIRST_G);
  const { search, stale, run, cancel, clear } = useSearch();
  const { down } = bench.view.getState();
  const cases = useMemo(() => aircraftCases(aircraft, down), [aircraft, down]);
  const useful = useMemo(() => {
    const both = usefulMass(aircraft, down, band);
    // Where nothing does both ways at once, what does lengthwise is still worth knowing.
    return both.length > 0
      ? { list: both, where: '' }
      : { list: usefulMass({ ...aircraft, lateralToleranceMm: 0 }, down, band), where: ' lengthwise' };
  }, [aircraft, down, band]);
  const remedy = useVerdict(({ advice }) => advice?.remedy ?? null);
  if (!band) return <p>State a target band first: there is nothing to aim at.</p>;
  const limits = { band, lateralMm: aircraft.lateralToleranceMm > 0 ? aircraft.lateralToleranceMm : null };
  const effects = spotEffects(cases, limits, aircraft.ballastSpots ?? usualSpots(aircraft), massG);
  const aloneWords = (atMm: Vec3) => {
    const range = massRange(cases, { band, lateralMm: null }, atMm);
    return range ? say.mass(Math.ceil(range.leastG)) : 'never';
  };
  const start = () =>
    void run({
      variants: [{ name: '', aircraft }],
      settings: {
        down,
        band,
        rules: Object.fromEntries([...aircraft.parts, ...aircraft.tanks].map(({ id }) => [id, STAY])),
      },
      probability: null,
    });
  return (
    <>
      <section>
        <h3>Before any lead</h3>
        <p>{usefulWords(useful.list, useful.where, say)}</p>
        {remedy && !/ballast/.test(remedy.kind) && <p>{remedy.words} would do with nothing added.</p>}
      </section>
      <section>
        <h3>The least ballast, nothing moved</h3>
        {search.phase === 'running' && (
          <Progress search={search} stale={stale} onCancel={cancel} onAgain={start} />
        )}
        {search.phase === 'done' && (
          <Result search={search} stale={stale} onPutAway={clear} onAgain={start} onRelaxed={start} />
        )}
        {search.phase === 'failed' && (
          <p className="arrange-fault" role="alert">
            {search.sentence}
          </p>
        )}
        {(search.phase === 'idle' || search.phase === 'failed') && (
          <>
            <p>Over all spots at once, lengthwise and sideways.</p>
            <div className="arrange-buttons">
              <button type="button" className="button strong" onClick={start}>
                Find it
              </button>
            </div>
          </>
        )}
      </section>
      <section>
        <h3>The same mass at each spot</h3>
        <OwnMeasure label="Mass" quantity="mass" value={massG} onChange={setMassG} />
        <table className="spot-table">
          <thead>
            <tr>
              <th scope="col">Spot</th>
              <th scope="col">Margin</th>
              {limits.lateralMm !== null && <th scope="col">Sideways</th>}
              <th scope="col">Needs alone</th>
            </tr>
          </thead>
          <tbody>
            {effects.map(({ spot, marginMm, lateralMarginMm }) => (
              <tr key={spot.id}>
                <th scope="row">{spot.name}</th>
                <td className="figure" data-short={marginMm < 0}>
                  {say.offset(marginMm)}
                </td>
                {limits.lateralMm !== null && (
                  <td className="figure" data-short={(lateralMarginMm ?? 0) < 0}>
                    {lateralMarginMm === null ? '' : say.offset(lateralMarginMm)}
                  </td>
                )}
                <td className="figure">{aloneWords(spot.positionMm)}</td>
              </tr>
            ))}
          </tbody>
        </table>
        <p className="hint">
          Margins are inside the limits where +. “Needs alone” is the least that brings every load state into
          the band from that spot.
        </p>
      </section>
    </>
  );
}

/** Half a gram more or less is no change. */
const SAME_G = 0.5;

function usefulWords(useful: readonly UsefulMass[], where: string, say: Readings): string {
  const [best] = useful;
  if (!best)
    return 'No pack or payload alone, heavier or lighter where it is, brings every load state inside.';
  const { part, changeG } = best;
  if (Math.abs(changeG) < SAME_G) return `Nothing is needed${where}: every load state is inside its limits.`;
  const [by, how] = [Math.abs(changeG), changeG > 0 ? 'heavier' : 'lighter'];
  const end =
    changeG > 0 ? 'and mass that does something is better than lead' : 'which is better than any lead';
  return `“${shownText(part.name)}” ${say.mass(Math.ceil(by))} ${how} would just do${where}, ${end}.`;
}
