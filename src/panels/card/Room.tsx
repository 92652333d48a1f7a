import type { Stretch } from '../../engine/geometry/types';
import './room.css';
import { useCallback, useMemo, useSyncExternalStore } from 'react';
import { aircraftExtent } from '../../model/airframe/extent';
import { itemById, placeItem } from '../../model/document/edit';
import { bandToKeep, type KeptFor } from '../../model/judgement/bandToKeep';
import type { ItemZone } from '../../model/place/itemZone';
import { aboardOf, freeAboard, offeredStation } from '../../model/place/offeredStation';
import { statedForWords } from '../../model/words/statedForWords';
import { buttlineWords, standWords, stationWords } from '../../model/words/zoneWords';
import type { Bench } from '../../store/bench';
import { useBench, useCommitted, useFit } from '../../store/react';
import { EditButton } from '../fields/EditButton';
import { useBenchValue, useRestingValue } from '../Live';
import { useReadings } from '../readings';
import { RoomStrip } from './RoomStrip';

/** What is nearer to the plane of symmetry than this is not asked about sideways, mm. */
const CENTRED_MM = 1;

/** The zone of an item, the very same for as long as only that item is moved. */
function useZone(id: string): ItemZone | null {
  const bench = useBench();
  const subscribe = useCallback(
    (listener: () => void) => {
      const off = [bench.balance, bench.place].map((store) => store.subscribe(listener));
      return () =>
        off.forEach((stop) => {
          stop();
        });
    },
    [bench],
  );
  return useSyncExternalStore(subscribe, () => bench.place.zone(id));
}

/** A strip shows at least so much on either side, mm. */
const LEAST_SIDE_MM = 60;

/** What of a whole line is drawn: all that is allowed and best, and where the item is, with some room on either side. */
function stretchShown(whole: Stretch, axis: ItemZone['station'] | null, hereMm: number): Stretch {
  const ends = axis?.allowed ? [axis.allowed.fromMm, axis.allowed.toMm] : [];
  const inside = (mm: number) => Math.min(whole.toMm, Math.max(whole.fromMm, mm));
  const marks = [...ends, axis?.bestMm ?? hereMm, hereMm].map(inside);
  const [low, high] = [Math.min(...marks), Math.max(...marks)];
  const sideMm = Math.max(LEAST_SIDE_MM, (high - low) / 2);
  return { fromMm: inside(low - sideMm), toMm: inside(high + sideMm) };
}

/** Said where the band is not simply the stated one. */
const HELD_WORDS: Readonly<Record<KeptFor, string>> = {
  limits: '',
  estimate: 'Held against the estimated band: start at its forward end.',
  'margin wanted': 'Held against the limits and the margin wanted, an estimate.',
  'usual margin': 'Held against the limits and the least margin that is usual, an estimate.',
};

function HeldAgainst() {
  const words = useBenchValue(({ document, balance }) => {
    const kept = bandToKeep(balance.get(), document.current());
    return kept ? HELD_WORDS[kept.keptFor] : '';
  });
  return words ? <p className="hint">{words}</p> : null;
}

/** Why it cannot be said where an item may sit. */
function NoRoom({ id }: { readonly id: string }) {
  const bench = useBench();
  const words = useBenchValue((live) => noRoomWords(live, id));
  const unstated = useBenchValue(({ balance }) => balance.get().band === null);
  const openLimits = () =>
    bench.view.setState(({ folds }) => ({ selectedId: null, folds: { ...folds, band: true } }));
  return (
    <>
      <p className="hint">{words}</p>
      {unstated && (
        <button type="button" className="button" onClick={openLimits}>
          State the CG limits
        </button>
      )}
    </>
  );
}

function noRoomWords({ balance, document }: Bench, id: string): string {
  const { band, massG } = balance.get();
  if (!band)
    return 'No CG limits are stated and no margin is wanted, so there is nothing to hold it against.';
  if (!(massG > 0)) return 'Nothing aboard has a mass yet.';
  const item = itemById(document.current(), id);
  const itemG = item && ('massG' in item ? item.massG : item.emptyMassG);
  if (itemG === 0) return 'It weighs nothing: wherever it sits, the balance is the same.';
  return 'Being worked out…';
}

/** Where an item may sit so that every load state stays in the band, with the margin at each place, and the best. */
export function Room({ id }: { readonly id: string }) {
  const bench = useBench();
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const differs = statedForWords(aircraft);
  const { minMm, maxMm } = useMemo(() => aircraftExtent(aircraft), [aircraft]);
  const zone = useZone(id);
  const at = (axis: 0 | 1) => () => itemById(bench.document.current(), id)?.positionMm[axis] ?? 0;
  const stationMm = useRestingValue(at(0));
  const buttlineMm = useRestingValue(at(1));
  const bandMm = useBenchValue(({ balance }) => {
    const { band } = balance.get();
    return band && band.aftMm - band.forwardMm;
  });
  const judged = useFit((fit) => fit.judged);
  const roomyStation = useMemo(() => {
    const judge = judged && zone ? bench.fit.judge() : null;
    return judge && zone && offeredStation(aircraft, id, zone, judge.nearestRoom);
  }, [aircraft, bench, id, judged, zone]);
  if (!zone || bandMm === null || zone.station.bestMm === null) return <NoRoom id={id} />;
  const aboard = aboardOf(aircraft);
  const item = itemById(aircraft, id);
  const goMm = roomyStation;
  const { marginMm, lateralMarginMm } = zone.marginAt(stationMm, buttlineMm);
  const onStand = standWords(zone, [stationMm, buttlineMm], say);
  // Where it stood when it was picked up, so that the drawing keeps still under a drag.
  const [itemX, itemY] = item?.positionMm ?? [0, 0];
  const along = { fromMm: aboard.noseMm, toMm: aboard.tailMm };
  const across = { fromMm: minMm[1], toMm: maxMm[1] };
  const sideways =
    zone.buttline !== null &&
    lateralMarginMm !== null &&
    (lateralMarginMm < 0 || Math.abs(itemY) > CENTRED_MM);
  return (
    <section className="room">
      <RoomStrip
        {...stretchShown(along, zone.station, itemX)}
        allowed={zone.station.allowed}
        free={freeAboard(zone, aboard)}
        marginAt={(mm) => zone.marginAt(mm, buttlineMm).marginMm}
        mostMm={bandMm / 2}
        hereMm={stationMm}
        bestMm={zone.station.bestMm}
      />
      <p>{stationWords(zone, aboard, say)}</p>
      {differs && <p className="hint">{differs}</p>}
      <HeldAgainst />
      <p className="hint">
        {marginMm >= 0
          ? `Here the least margin is ${say.lengthFine(marginMm)}.`
          : `Here the worst load state is ${say.lengthFine(-marginMm)} outside, ${zone.marginAt(stationMm, buttlineMm).case.name}.`}
      </p>
      {onStand && <p className="hint">{onStand}</p>}
      {judged && goMm === null && zone.station.allowed && (
        <p className="hint">
          At its height and buttline no place was found there where it fits in every load state.
        </p>
      )}
      {item && goMm !== null && (
        <EditButton
          className="button strong"
          disabled={item.locked === true || Math.abs(goMm - stationMm) < 0.5}
          step={`Move ${item.name}`}
          edit={() => placeItem(aircraft, id, [goMm, item.positionMm[1], item.positionMm[2]])}
        >
          Move to {say.station(goMm)}
        </EditButton>
      )}
      {sideways && (
        <>
          <RoomStrip
            {...stretchShown(across, zone.buttline, itemY)}
            allowed={zone.buttline?.allowed ?? null}
            free={[]}
            marginAt={(mm) => zone.marginAt(stationMm, mm).lateralMarginMm ?? 0}
            mostMm={aircraft.lateralToleranceMm}
            hereMm={buttlineMm}
            bestMm={zone.buttline?.bestMm ?? null}
          />
          <p>{buttlineWords(zone, say)}</p>
        </>
      )}
    </section>
  );
}
