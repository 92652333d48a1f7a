import { useMemo } from 'react';
import { type PackOffer, smallestPack } from '../../model/advice/packChoice';
import type { Part } from '../../model/document/types';
import { type PowerPlan, powerPlan } from '../../model/power/draws';
import { lostWithout } from '../../model/power/flows';
import { enduranceOf, isControl, isEngine } from '../../model/power/powerProblems';
import { type Wiring, wiringOf } from '../../model/power/wiring';
import { chemistryNames, lastsWords, takesWords } from '../../model/words/powerWords';
import { useBench, useCommitted } from '../../store/react';
import { useReadings } from '../readings';
import { OtherPack } from './OtherPack';

/** How long each pack lasts against what the flight asks for, what falls with it, and the smallest that would do. */
export function Packs() {
  const wiring = useCommitted(wiringOf);
  const aircraft = useCommitted((committed) => committed);
  const plan = powerPlan(aircraft);
  const lasting = wiring && plan && enduranceOf(wiring, plan)?.packs;
  const offers = useMemo(
    () => new Map(wiring?.packs.map(({ id }) => [id, smallestPack(aircraft, id)])),
    [wiring, aircraft],
  );
  if (!wiring || wiring.packs.length === 0) return null;
  return (
    <section className="power-packs" aria-label="Packs">
      <h3>How long they last</h3>
      {plan && (
        <p className="hint">
          The flight takes {takesWords(plan.flightS)}, {takesWords(plan.neededS)} with a reserve of{' '}
          {plan.reservePct} %{plan.from === 'fuel profile' ? ', by the fuel profile' : ''}. At mean currents,
          which are estimates until a meter has read them.
        </p>
      )}
      {wiring.packs.map((part) => (
        <Pack
          key={part.id}
          part={part}
          wiring={wiring}
          plan={plan}
          lastsS={lasting?.get(part.id)?.emptyAtS ?? null}
          usedMah={lasting?.get(part.id)?.usedMah ?? null}
          offer={offers.get(part.id) ?? null}
        />
      ))}
    </section>
  );
}

interface PackProps {
  readonly part: Part;
  readonly wiring: Wiring;
  readonly plan: PowerPlan | null;
  readonly lastsS: number | null;
  readonly usedMah: number | null;
  readonly offer: PackOffer | null;
}

function Pack({ part, wiring, plan, lastsS, usedMah, offer }: PackProps) {
  const { view } = useBench();
  const say = useReadings();
  const pack = part.power?.pack;
  if (!pack) return null;
  const scaleS = plan ? Math.max(plan.neededS * 1.25, Math.min(lastsS ?? 0, plan.neededS * 3)) : 1;
  const share = (seconds: number) => `${(100 * Math.min(seconds, scaleS)) / scaleS}%`;
  const short = plan && lastsS !== null && lastsS < plan.neededS;
  return (
    <article className="power-pack">
      <header>
        <button type="button" className="link" onClick={() => view.setState({ selectedId: part.id })}>
          {part.name}
        </button>
        <span>
          {chemistryNames[pack.chemistry]}, {pack.cells}S, {pack.capacityMah} mAh, {say.mass(part.massG)}
        </span>
        <span className="figure">{lastsS === null ? '–' : lastsWords(lastsS)}</span>
      </header>
      {plan && (
        <div className="power-bar" aria-hidden="true" data-short={short || undefined}>
          <i style={{ width: lastsS === null ? '0%' : share(lastsS) }} />
          <b style={{ left: share(plan.flightS) }} />
          <b style={{ left: share(plan.neededS) }} data-reserve />
        </div>
      )}
      <p className="hint">
        {usedMah !== null && `The flight takes ${Math.round(usedMah)} mAh of it. `}
        {fallsWords(wiring, part)}
      </p>
      {offer && <OtherPack name={part.name} offer={offer} />}
    </article>
  );
}

/** What is lost with a pack. */
function fallsWords(wiring: Wiring, part: Part): string {
  const feedsAnything = wiring.feeds.some(({ from }) => from.id === part.id);
  if (!feedsAnything) return 'It feeds nothing.';
  const lost = lostWithout(wiring, part.id);
  if (lost.length === 0) return 'If it fails, the others carry on.';
  const groups = [lost.some(isControl) && 'control', lost.some(isEngine) && 'the engine'].filter(Boolean);
  if (groups.length > 0)
    return `If it fails, ${groups.join(' and ')} ${groups.length > 1 ? 'are' : 'is'} lost.`;
  return `If it fails, ${lost.map(({ name }) => name).join(', ')} ${lost.length > 1 ? 'go' : 'goes'} with it.`;
}
