import './room.css';
import { useCallback, useMemo, useSyncExternalStore } from 'react';
import { aircraftExtent } from '../../model/airframe/extent';
import { itemById, placeItem } from '../../model/document/edit';
import type { ItemZone } from '../../model/place/itemZone';
import { bestFreeStation, buttlineWords, freeAboard, stationWords } from '../../model/words/zoneWords';
import { useBench, useCommitted, useFit } from '../../store/react';
import { EditButton } from '../fields/EditButton';
import { useBenchValue } from '../Live';
import { useReadings } from '../readings';
import { RoomStrip, type Stretch } from './RoomStrip';

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

/** Where an item may sit so that every load state stays in the band, with the margin at each place, and the best. */
export function Room({ id }: { readonly id: string }) {
  const bench = useBench();
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const { minMm, maxMm } = useMemo(() => aircraftExtent(aircraft), [aircraft]);
  const zone = useZone(id);
  const at = (axis: 0 | 1) => () => itemById(bench.document.current(), id)?.positionMm[axis] ?? 0;
  const stationMm = useBenchValue(at(0));
  const buttlineMm = useBenchValue(at(1));
  const bandMm = useBenchValue(({ balance }) => {
    const { band } = balance.get();
    return band && band.aftMm - band.forwardMm;
  });
  const judged = useFit((fit) => fit.judged);
  const roomyStation = useMemo(() => {
    const ends = { noseMm: minMm[0], tailMm: maxMm[0] };
    const wanted = zone && bestFreeStation(zone, ends);
    if (!judged || !zone || wanted === null) return null;
    return bench.fit.judge()?.nearestRoom(aircraft, id, freeAboard(zone, ends), wanted) ?? null;
  }, [aircraft, bench, id, judged, maxMm, minMm, zone]);
  if (!zone || bandMm === null || zone.station.bestMm === null) return null;
  const aboard = { noseMm: minMm[0], tailMm: maxMm[0] };
  const item = itemById(aircraft, id);
  const goMm = roomyStation;
  const { marginMm, lateralMarginMm } = zone.marginAt(stationMm, buttlineMm);
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
      <h3>Where may it sit?</h3>
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
      <p className="hint">
        {marginMm >= 0
          ? `Here the least margin is ${say.lengthFine(marginMm)}.`
          : `Here the worst load state is ${say.lengthFine(-marginMm)} outside, ${zone.marginAt(stationMm, buttlineMm).case.name}.`}
      </p>
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
