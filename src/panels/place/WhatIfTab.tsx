import { useMemo, useState } from 'react';
import { fuelRange } from '../../engine/place/fuelRange';
import { payloadAt } from '../../model/place/usefulMass';
import { useBalance, useBench, useCommitted, useKeptBand } from '../../store/react';
import { useReadings } from '../readings';
import { OwnMeasure } from './OwnMeasure';
import { Swap } from './Swap';

const percent = (share: number) => `${Math.round(share * 100)} %`;

/** Another pack, the heaviest payload at a spot, and how much fuel keeps the band. */
export function WhatIfTab() {
  return (
    <>
      <Swap />
      <Payload />
      <FuelThatKeepsIt />
    </>
  );
}

function Payload() {
  const bench = useBench();
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const { down } = bench.view.getState();
  const cg = bench.balance.get().cgMm;
  const [stationMm, setStationMm] = useState(() => Math.round(cg?.[0] ?? 0));
  const [buttlineMm, setButtlineMm] = useState(0);
  const band = useKeptBand();
  const range = useMemo(
    () => payloadAt(aircraft, down, [stationMm, buttlineMm, 0], band),
    [aircraft, down, stationMm, buttlineMm, band],
  );
  return (
    <section>
      <h3>The heaviest payload</h3>
      <OwnMeasure
        label="Station"
        quantity="length"
        value={stationMm - say.fromMm}
        onChange={(mm) => setStationMm(mm + say.fromMm)}
      />
      <OwnMeasure label="Buttline" quantity="length" value={buttlineMm} onChange={setButtlineMm} />
      <p data-testid="payload">{words()}</p>
    </section>
  );

  function words(): string {
    if (!band) return 'There is no band to hold it against.';
    if (!range) return 'No payload there brings every load state inside its limits.';
    const by = range.mostBy ? ` More leaves the limits ${range.mostBy.name}.` : '';
    const most = Number.isFinite(range.mostG) ? `up to ${say.mass(Math.floor(range.mostG))}` : 'any mass';
    const least = range.leastG > 0.5 ? `, and at least ${say.mass(Math.ceil(range.leastG))}` : '';
    return `There it carries ${most}${least}.${by}`;
  }
}

function FuelThatKeepsIt() {
  const travel = useBalance((balance) => balance.travel);
  const band = useKeptBand();
  if (!band || travel.length < 2) return null;
  const stretches = fuelRange(travel, band);
  const [only] = stretches;
  const words = stretches.map(
    ({ fromFraction, toFraction }) => `${percent(fromFraction)} to ${percent(toFraction)}`,
  );
  const whole = only && only.fromFraction < 0.001 && only.toFraction > 0.999;
  return (
    <section>
      <h3>Fuel that keeps the band</h3>
      <div className="fuel-strip" aria-hidden="true">
        {stretches.map(({ fromFraction, toFraction }) => (
          <span
            className="kept"
            key={fromFraction}
            style={{ left: `${fromFraction * 100}%`, right: `${100 - toFraction * 100}%` }}
          />
        ))}
      </div>
      <p>
        {stretches.length === 0
          ? 'With no amount of fuel is the CG in the band, in the load state shown.'
          : whole
            ? 'Any amount, dry to full, in the load state shown.'
            : `From ${words.join(' and ')}, in the load state shown.`}
      </p>
    </section>
  );
}
