import './stability.css';
import { pctMacToStation } from '../../engine/wing/planform';
import { LINE_95 } from '../../model/balance/certainty';
import { type MacMode, macMode, wingPlanform } from '../../model/stability/band';
import { withMacMode } from '../../model/stability/macMode';
import {
  changeStability,
  ESTIMATE_ADVICE,
  stabilityInput,
  stabilitySettings,
} from '../../model/stability/stability';
import { formatArea, formatNumber } from '../../model/units';
import { bandBehindWords } from '../../model/words/marginWords';
import { doubtWords, noteWords } from '../../model/words/neutralPointWords';
import { lengthUp } from '../../model/words/say';
import { useAircraft, useBalance, useBench, useStability } from '../../store/react';
import { Choice, Tick } from '../fields/Choice';
import { Icon } from '../icons';
import { Live } from '../Live';
import { type Readings, useReadings } from '../readings';
import { Figure } from './Figure';
import { SpanLoading } from './SpanLoading';
import { ofMac, panelWords, shiftWords } from './words';

/** The estimate of the neutral point with all that bears on its trust; always called an estimate. */
export default function EstimateFigures() {
  const say = useReadings();
  const { stability } = useBench();
  const estimate = useStability((now) => now.estimate);
  const fresh = useStability((now) => now.fresh);
  const fault = useStability((now) => now.fault);
  const mayRetry = useStability((now) => now.mayRetry);
  const counted = useAircraft((aircraft) => stabilitySettings(aircraft).fuselage);
  const hasHull = useAircraft((aircraft) => stabilityInput(aircraft).hull !== null);
  return (
    <div className="estimate" data-testid="estimate" data-fresh={fresh && estimate !== null}>
      <h3>
        Estimate
        {!fresh && <span className="estimate-waits">being worked out…</span>}
      </h3>
      {fault && <p className="fault">{fault}</p>}
      {mayRetry && (
        <button type="button" className="button" onClick={stability.retry}>
          Retry
        </button>
      )}
      {!estimate && !fault && fresh && <p className="hint">Nothing aboard lifts, so there is no estimate.</p>}
      {estimate && (
        <dl className="figures derived">
          <Figure name="Estimated neutral point" term="neutral-point" strong>
            {say.stationFine(estimate.neutralPointMm)} ±{' '}
            {lengthUp(LINE_95 * estimate.neutralPointSigmaMm, say)}
            <span>{ofMac(estimate.pctMac)}</span>
          </Figure>
          <Margins />
          <EstimatedBand say={say} />
        </dl>
      )}
      <Warning say={say} />
      {estimate && <p className="estimate-advice">{ESTIMATE_ADVICE}</p>}
      {estimate?.notes.map((note) => {
        const words = noteWords(note, say.length);
        return (
          <p key={words} className="hint">
            {words}
          </p>
        );
      })}
      <Wing say={say} />
      {hasHull && (
        <Tick
          label="Count the fuselage"
          step="Change whether the fuselage is counted"
          read={(aircraft) => stabilitySettings(aircraft).fuselage}
          write={(aircraft, fuselage) => changeStability(aircraft, { fuselage })}
        />
      )}
      {estimate && (
        <>
          {hasHull && counted && (
            <p className="hint">{shiftWords(estimate.fuselageShiftMm, say.lengthFine)}</p>
          )}
          <dl className="figures derived">
            <Figure name="Estimated lift-curve slope">
              {formatNumber(estimate.clAlphaPerRad, 2)}
              <span>per rad</span>
            </Figure>
            {estimate.textbookMm !== null && (
              <Figure name="Textbook sum">
                {say.stationFine(estimate.textbookMm)}
                <span>surfaces alone</span>
              </Figure>
            )}
          </dl>
          {estimate.textbookDiffers && (
            <p className="estimate-warning">
              <Icon name="warn" />
              The textbook sum and the lattice part by more than is usual: look over the geometry before you
              trust this estimate.
            </p>
          )}
          <p className="hint">{panelWords(estimate)}</p>
          <SpanLoading estimate={estimate} />
          <h4>What its ± is made of</h4>
          <ul className="doubts">
            {[...estimate.doubts]
              .sort((a, b) => b.sigmaMm - a.sigmaMm)
              .map((doubt) => (
                <li key={doubt.cause}>{doubtWords(doubt, say.lengthFine)}</li>
              ))}
          </ul>
        </>
      )}
    </div>
  );
}

/** The static margin at the loading shown, and the least over the burn. */
function Margins() {
  const now = useBalance(({ margin }) => margin?.nowPct ?? null);
  const least = useBalance(({ margin }) => margin?.leastPct ?? null);
  const at = useBalance(({ margin }) => margin?.atFuelFraction ?? 0);
  const burns = useBalance(({ travel }) => travel.length > 1);
  if (now === null || least === null) return null;
  const when = at > 0.995 ? 'full' : at < 0.005 ? 'dry' : `${Math.round(at * 100)} % left`;
  return (
    <>
      <Figure name="Estimated margin now" term="margin" strong>
        {ofMac(now)}
      </Figure>
      {burns && (
        <Figure name="Least, over the burn">
          {ofMac(least)}
          <span>{when}</span>
        </Figure>
      )}
    </>
  );
}

function EstimatedBand({ say }: { readonly say: Readings }) {
  const forwardMm = useBalance(({ estimatedBand }) => estimatedBand?.forwardMm ?? null);
  const aftMm = useBalance(({ estimatedBand }) => estimatedBand?.aftMm ?? null);
  if (forwardMm === null || aftMm === null) return null;
  return (
    <Figure name="Estimated band" term="band">
      {say.station(forwardMm)} – {say.station(aftMm)}
    </Figure>
  );
}

/** That the stated band reaches behind the estimated neutral point. */
function Warning({ say }: { readonly say: Readings }) {
  const warning = useBalance((balance) => bandBehindWords(balance, say.length));
  if (!warning) return null;
  return (
    <p className="estimate-warning">
      <Icon name="warn" />
      {warning}
    </p>
  );
}

/** The wing that % MAC is read on: exact integrals, no estimate. */
function Wing({ say }: { readonly say: Readings }) {
  const wing = useAircraft(wingPlanform);
  const mode = useAircraft(macMode);
  if (!wing) return null;
  return (
    <>
      <Choice
        label="% MAC on"
        step="Change the wing that % MAC is read on"
        options={MAC_OPTIONS}
        read={macMode}
        write={(aircraft, to) => withMacMode(aircraft, to as MacMode)}
      />
      <dl className="figures">
        <Figure name={mode === 'gross' ? 'MAC, gross' : 'MAC, as drawn'} term="mac">
          {say.lengthFine(wing.macMm)}
          <span>buttline {say.length(wing.macButtlineMm)}</span>
        </Figure>
        <Figure name="LEMAC">
          {say.stationFine(wing.lemacMm)}
          <span>quarter {say.station(pctMacToStation(wing, 25))}</span>
        </Figure>
        <Figure name="Wing area">
          {formatArea(wing.areaMm2, say.units)}
          <span>aspect ratio {formatNumber(wing.aspectRatio, 1)}</span>
        </Figure>
        <Figure name="CG on the MAC" term="cg">
          <Live
            read={({ balance }) => {
              const cgMm = balance.get().cgMm;
              return cgMm ? ofMac((100 * (cgMm[0] - wing.lemacMm)) / wing.macMm) : '–';
            }}
          />
        </Figure>
      </dl>
    </>
  );
}

const MAC_OPTIONS: readonly { readonly value: MacMode; readonly label: string }[] = [
  { value: 'gross', label: 'Gross wing' },
  { value: 'exposed', label: 'Wing as drawn' },
];
