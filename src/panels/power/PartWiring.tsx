import { feed, setPower, unfeed } from '../../model/document/powerEdits';
import type { Aircraft, Part, PartPower, PowerSupply } from '../../model/document/types';
import { isSameUse, packOfMass, typicalRegulator, typicalUses } from '../../model/power/typical';
import { useCommitted } from '../../store/react';
import { Choice, Tick } from '../fields/Choice';
import { Measure } from '../fields/Measure';
import { changed, Figure, type Of, partOf, powerOf } from './Figure';
import { PackFields } from './PackFields';

const kinds = [
  { value: 'none', label: 'Not in the wiring' },
  { value: 'pack', label: 'A pack' },
  { value: 'use', label: 'Draws current' },
  { value: 'regulator', label: 'A regulator' },
  { value: 'both', label: 'Draws current, and regulates for others' },
] as const;
type Kind = (typeof kinds)[number]['value'];

function kindOf(power: PartPower | undefined): Kind {
  if (!power) return 'none';
  if (power.pack) return 'pack';
  if (power.regulator) return power.use ? 'both' : 'regulator';
  return 'use';
}

/** What a part becomes when its kind is chosen; what feeds it stays where it may. */
function become(aircraft: Aircraft, part: Part, kind: Kind): Aircraft {
  const { fedBy = [], use = typicalUses[0]?.use, regulator = typicalRegulator } = part.power ?? {};
  switch (kind) {
    case 'none':
      return setPower(aircraft, part.id, null);
    case 'pack':
      return setPower(aircraft, part.id, { pack: packOfMass(part, 'lipo', 2) });
    case 'use':
      return setPower(aircraft, part.id, { use, fedBy });
    case 'regulator':
      return setPower(aircraft, part.id, { regulator, fedBy });
    case 'both':
      return setPower(aircraft, part.id, { use, regulator, fedBy });
  }
}

/** What one part is to the wiring, and what feeds it. */
export function PartWiring({ id, name }: { readonly id: string; readonly name: string }) {
  const power = useCommitted(powerOf(id));
  return (
    <section className="power-card" aria-label={name}>
      <h3>{name}</h3>
      <Choice
        label="It is"
        options={kinds}
        step={`Change the wiring of ${name}`}
        read={(aircraft) => kindOf(powerOf(id)(aircraft))}
        write={(aircraft, kind) => {
          const part = partOf(id)(aircraft);
          return part ? become(aircraft, part, kind as Kind) : aircraft;
        }}
      />
      {power?.pack && <PackFields id={id} name={name} />}
      {power?.use && <UseFields id={id} name={name} />}
      {power?.regulator && <RegulatorFields id={id} name={name} />}
      {power && !power.pack && <FedBy id={id} name={name} />}
    </section>
  );
}

const useOptions = typicalUses.map(({ name }, at) => ({ value: String(at), label: name }));

function UseFields({ id, name }: Of) {
  const follows = useCommitted((aircraft) => powerOf(id)(aircraft)?.use?.followsThrottle ?? false);
  const measured = useCommitted((aircraft) => powerOf(id)(aircraft)?.use?.measured ?? false);
  const figure = { id, name, section: 'use' } as const;
  return (
    <>
      <Choice
        label="Figures of"
        options={[{ value: '', label: 'its own' }, ...useOptions]}
        step={`Typical figures for ${name}`}
        read={(aircraft) => {
          const use = powerOf(id)(aircraft)?.use;
          const at = typicalUses.findIndex((typical) => isSameUse(typical.use, use));
          return at < 0 ? '' : String(at);
        }}
        write={(aircraft, at) => {
          const typical = typicalUses[Number(at)];
          const power = powerOf(id)(aircraft);
          return at === '' || !typical || !power
            ? aircraft
            : setPower(aircraft, id, { ...power, use: typical.use });
        }}
      />
      <Figure {...figure} field="minV" label="At least" unit="V" />
      <Figure {...figure} field="maxV" label="At most" unit="V" />
      <Figure {...figure} field="meanA" label={follows ? 'At full throttle' : 'On the mean'} unit="A" />
      <Figure {...figure} field="peakA" label="At its most" unit="A" />
      {follows && <Figure {...figure} field="idleA" label="At idle" unit="A" empty="0" />}
      <Tick
        label="Follows the throttle"
        step={`Throttle of ${name}`}
        read={(aircraft) => powerOf(id)(aircraft)?.use?.followsThrottle ?? false}
        write={(aircraft, on) => changed(aircraft, id, 'use', { followsThrottle: on || undefined })}
      />
      <p className="hint">
        {measured
          ? 'The currents were read from a meter.'
          : 'The currents are typical or from a datasheet: estimates until a meter has read them.'}
      </p>
      <Tick
        label="Read from a meter"
        step={`Source of the currents of ${name}`}
        read={(aircraft) => powerOf(id)(aircraft)?.use?.measured ?? false}
        write={(aircraft, on) => changed(aircraft, id, 'use', { measured: on || undefined })}
      />
    </>
  );
}

function RegulatorFields({ id, name }: Of) {
  const figure = { id, name, section: 'regulator' } as const;
  return (
    <>
      <Choice
        label="Regulates"
        options={[
          { value: 'switching', label: 'by switching' },
          { value: 'linear', label: 'linear' },
        ]}
        step={`Change the regulator of ${name}`}
        read={(aircraft) => powerOf(id)(aircraft)?.regulator?.way ?? 'switching'}
        write={(aircraft, way) =>
          changed(aircraft, id, 'regulator', { way: way === 'linear' ? 'linear' : 'switching' })
        }
      />
      <Figure {...figure} field="outputV" label="Gives" unit="V" />
      <Figure {...figure} field="maxA" label="Good for" unit="A" empty="not judged" />
      <Figure {...figure} field="dropoutV" label="Needs more by" unit="V" empty="as is common" />
      <Figure {...figure} field="efficiencyPct" label="Efficiency" unit="%" empty="as is common" />
    </>
  );
}

/** What others are commonly plugged into. */
const OUTLETS: readonly NonNullable<PartPower['use']>['kind'][] = ['receiver', 'stabiliser', 'engineControl'];

/** What could feed a part: packs, regulators, what others are plugged into, and what feeds it already; nothing that hangs on it. */
function feedersOf(aircraft: Aircraft, id: string): readonly Part[] {
  const below = new Set([id]);
  const { parts } = aircraft;
  const isBelow = ({ power }: Part) => power?.fedBy?.some(({ from }) => below.has(from)) ?? false;
  for (let grown = true; grown; ) {
    const more = parts.filter((part) => !below.has(part.id) && isBelow(part));
    for (const part of more) below.add(part.id);
    grown = more.length > 0;
  }
  const feeding = new Set(parts.flatMap(({ power }) => (power?.fedBy ?? []).map(({ from }) => from)));
  return parts.filter(({ id: other, power }) => {
    if (below.has(other) || !power) return false;
    const outlet = power.use && OUTLETS.includes(power.use.kind);
    return power.pack || power.regulator || outlet || feeding.has(other);
  });
}

const supplyOf = (aircraft: Aircraft, id: string, from: string) =>
  powerOf(id)(aircraft)?.fedBy?.find((supply) => supply.from === from);

/** What feeds it: a tick for each that could. */
function FedBy({ id, name }: Of) {
  const aircraft = useCommitted((committed) => committed);
  const feeders = feedersOf(aircraft, id);
  return (
    <fieldset className="power-feeders">
      <legend>Fed by</legend>
      {feeders.length === 0 && <p className="hint">Nothing that could feed it is in the wiring yet.</p>}
      {feeders.map((from) => (
        <div key={from.id}>
          <Tick
            label={from.name}
            step={`Feed ${name} from ${from.name}`}
            read={(now) => supplyOf(now, id, from.id) !== undefined}
            write={(now, on) => (on ? feed(now, id, { from: from.id }) : unfeed(now, id, from.id))}
          />
          {supplyOf(aircraft, id, from.id) && <SupplyFields id={id} name={name} from={from} />}
        </div>
      ))}
    </fieldset>
  );
}

function SupplyFields({ id, name, from }: Of & { readonly from: Part }) {
  const put = (aircraft: Aircraft, change: Partial<PowerSupply>) => {
    const supply = supplyOf(aircraft, id, from.id);
    return supply ? feed(aircraft, id, { ...supply, ...change }) : aircraft;
  };
  const step = `Change the wires from ${from.name} to ${name}`;
  return (
    <div className="power-supply">
      <Measure
        label="Carries"
        quantity="number"
        suffix="A"
        step={step}
        read={(aircraft) => supplyOf(aircraft, id, from.id)?.maxA}
        write={(aircraft, maxA) => put(aircraft, { maxA })}
        empty={{ means: 'not judged', write: (aircraft) => put(aircraft, { maxA: undefined }) }}
      />
      <Measure
        label="One wire"
        quantity="number"
        suffix="mm²"
        step={step}
        read={(aircraft) => supplyOf(aircraft, id, from.id)?.wireMm2}
        write={(aircraft, wireMm2) => put(aircraft, { wireMm2 })}
        empty={{ means: 'no loss', write: (aircraft) => put(aircraft, { wireMm2: undefined }) }}
      />
      {from.power?.regulator && (
        <Tick
          label="Before its regulator"
          step={step}
          read={(aircraft) => supplyOf(aircraft, id, from.id)?.pastRegulator ?? false}
          write={(aircraft, on) => put(aircraft, { pastRegulator: on || undefined })}
        />
      )}
    </div>
  );
}
