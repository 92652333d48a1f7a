import './power.css';
import { listed } from '../../model/document/inWords';
import { shownText } from '../../model/document/names';
import type { Aircraft, Part, Role } from '../../model/document/types';
import { powerProblems } from '../../model/power/powerProblems';
import { powerCount } from '../../model/words/powerWords';
import { useBench, useCommitted, useSteadyList, useView } from '../../store/react';
import { Flight } from './Flight';
import { Packs } from './Packs';
import { PartWiring } from './PartWiring';
import { Problems } from './Problems';
import { Ways } from './Ways';
import { Wires } from './Wires';

/** What each pack feeds, for how long, and whether that holds. */
export function Power() {
  const problems = useCommitted(powerProblems);
  return (
    <main className="place power" data-testid="power">
      <header className="power-head">
        <h2>Power</h2>
        {problems && <p>{powerCount(problems) || 'The wiring holds'}</p>}
      </header>
      {problems ? (
        <div className="power-rooms">
          <div className="power-main">
            <Problems problems={problems} />
            <EverythingAboard />
            <Wires problems={problems} />
            <Unwired />
            <Flight />
            <Packs />
            <Ways />
            <PowerCautions />
          </div>
          <Chosen />
        </div>
      ) : (
        <div className="power-rooms">
          <div className="power-main">
            <p>
              Nothing is in the wiring yet. Begin with a pack: choose it, and say what it is. Then choose what
              it feeds.
            </p>
            <Unwired />
            <PowerCautions />
          </div>
          <Chosen />
        </div>
      )}
    </main>
  );
}

/** The card of the part that is selected. */
function Chosen() {
  const id = useView((view) => view.selectedId);
  const name = useCommitted((aircraft) => aircraft.parts.find((part) => part.id === id)?.name ?? null);
  if (id === null || name === null) {
    return (
      <p className="power-card hint">Choose a part to say what it is to the wiring and what feeds it.</p>
    );
  }
  return <PartWiring key={id} id={id} name={name} />;
}

/** What is likely to be electric stands first, as it is aboard otherwise. */
const ELECTRIC: readonly Role[] = ['energy', 'radio', 'control', 'powerplant', 'payload'];

const unwired = ({ parts }: Aircraft) => {
  const rank = ({ role }: Part) => (ELECTRIC.includes(role) ? ELECTRIC.indexOf(role) : ELECTRIC.length);
  return parts
    .filter(({ power, role }) => power === undefined && role !== 'ballast')
    .toSorted((a, b) => rank(a) - rank(b));
};

/** What is wired and not aboard in every load state. */
function takenOut({ parts, switches = [] }: Aircraft): readonly string[] {
  const without = new Set(
    switches.flatMap(({ positions }) => positions.flatMap(({ without: gone = [] }) => gone)),
  );
  return parts.flatMap(({ id, name, power }) => (power && without.has(id) ? [shownText(name)] : []));
}

/** Says that load states are not looked at, where one of them leaves something out that is wired. */
function EverythingAboard() {
  const names = useCommitted(useSteadyList(takenOut));
  if (names.length === 0) return null;
  return (
    <p className="hint">
      Judged with everything aboard: {listed(names)}, which a load state leaves out,{' '}
      {names.length > 1 ? 'are' : 'is'} taken to be there.
    </p>
  );
}

/** What is not in the wiring, to be chosen. */
function Unwired() {
  const { view } = useBench();
  const parts = useCommitted(useSteadyList(unwired));
  if (parts.length === 0) return null;
  return (
    <section className="power-unwired" aria-label="Not in the wiring">
      <h3>Not in the wiring</h3>
      <ul>
        {parts.map(({ id, name }) => (
          <li key={id}>
            <button type="button" className="button" onClick={() => view.setState({ selectedId: id })}>
              {name}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

function PowerCautions() {
  return (
    <section className="power-cautions" aria-label="Cautions">
      <h3>Before it is plugged in</h3>
      <p>
        Typical currents and voltages are no datasheet: read the maker’s, and measure with a meter on your own
        model. A connector the wrong way round destroys what it feeds: check polarity before the first time.
        Secure plugs so that they cannot work loose, and keep wires off propellers, exhausts and moving arms.
      </p>
      <p>
        Lithium packs: charge outside the model on a surface that cannot burn, at the rate and with the
        charger meant for their kind, never unattended. Store them half charged, cool and in something that
        holds fire. A pack that is swollen, dented, wet or hot is taken out of use. Take the propeller off
        while you work on a motor that is plugged in. Your association’s rules and an experienced inspector
        have the last word.
      </p>
    </section>
  );
}
