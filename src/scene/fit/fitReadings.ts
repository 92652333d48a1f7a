import type { Vec3 } from '../../engine/geometry/types';
import { lerp } from '../../engine/geometry/vec3';
import { holdsIn } from '../../model/airframe/aboard';
import { type LeadState, leadState } from '../../model/airframe/leads';
import { itemById } from '../../model/document/edit';
import { shownText } from '../../model/document/names';
import { type Clearance, clashesIn, clearances } from '../../model/fit/clearances';
import { keepOutZones } from '../../model/fit/keepApart';
import type { FitProblem } from '../../model/fit/wholeFit';
import { ballastFreeZones } from '../../model/place/ballastFree';
import { usualSpots } from '../../model/place/ballastPlaces';
import { formatLength } from '../../model/units';
import type { Bench } from '../../store/bench';
import { layerShown } from '../../store/viewStore';

/** Words put beside something of fit on the stage. */
export interface FitLabel {
  readonly atMm: Vec3;
  readonly text: string;
  readonly tone: 'plain' | 'bad';
}

/** Whose distances are drawn: what is in hand, else what is selected. Null when it is hidden or on its way in. */
function watchedId({ drag, view, fit, document }: Bench): string | null {
  if (fit.get().playing) return null;
  const { selectedId, hiddenIds } = view.getState();
  const id = drag.api.getState().itemId ?? selectedId;
  return id && !hiddenIds.includes(id) && itemById(document.current(), id) ? id : null;
}

/** A piece of structure is hidden with the element that it is of. */
const isHidden = (id: string, hiddenIds: readonly string[]) =>
  hiddenIds.some((hidden) => id === hidden || id.startsWith(`${hidden}.`));

/** Its distances to what is shown, nearest first. */
function seenClearances(bench: Bench, itemId: string): readonly Clearance[] {
  const { hiddenIds } = bench.view.getState();
  const all = clearances(bench.document.current(), itemId);
  return hiddenIds.length === 0 ? all : all.filter(({ id }) => !isHidden(id, hiddenIds));
}

/** What is drawn as a dimension: the deepest clash, else the nearest thing. */
export function drawnClearance(bench: Bench): Clearance | null {
  const id = watchedId(bench);
  if (!id) return null;
  const list = seenClearances(bench, id);
  return clashesIn(list)[0] ?? list.find(({ distanceMm }) => distanceMm >= 0) ?? null;
}

/** What cannot be built so, of all that stands in the load state shown. */
export function problemsNow({ fit, view, document }: Bench): FitProblem[] {
  if (fit.get().playing) return [];
  const bad = (fit.whole()?.problems ?? []).filter(({ severity }) => severity === 'bad');
  return bad.filter(({ states }) => holdsIn(states, document.current(), view.getState().positions));
}

/** The leads with both ends in the picture. */
export function seenLeads({ document, view }: Bench): LeadState[] {
  const { hiddenIds } = view.getState();
  const aircraft = document.current();
  return (aircraft.leads ?? []).flatMap((lead) => {
    const gone = [lead.id, lead.from, lead.to].some((id) => hiddenIds.includes(id));
    return gone ? [] : (leadState(aircraft, lead) ?? []);
  });
}

/** All words of fit for what the stage shows now. */
export function fitLabels(bench: Bench): FitLabel[] {
  const { units } = bench.view.getState();
  const labels: FitLabel[] = [];
  const clearance = drawnClearance(bench);
  // A figure belongs to its dimension line; that something is run into is said anyhow.
  if (clearance && (clearance.distanceMm < 0 || layerShown(bench.view.getState(), 'fit'))) {
    const { distanceMm, name, pointsMm } = clearance;
    const figure = formatLength(Math.abs(distanceMm), units, { fine: true });
    const bad = distanceMm < 0;
    labels.push({
      atMm: lerp(...pointsMm, 0.5),
      text: bad ? `${figure} into ${shownText(name)}` : figure,
      tone: bad ? 'bad' : 'plain',
    });
  }
  for (const { name, slackMm, pathMm } of seenLeads(bench)) {
    if (slackMm >= 0) continue;
    const text = `${shownText(name)}: ${formatLength(-slackMm, units)} short`;
    labels.push({ atMm: middleOf(pathMm), text, tone: 'bad' });
  }
  const { itemId } = bench.drag.api.getState();
  const aircraft = bench.document.current();
  for (const zone of itemId ? keepOutZones(aircraft, itemId) : []) {
    const other = itemById(aircraft, zone.itemId);
    if (!other || bench.view.getState().hiddenIds.includes(other.id)) continue;
    const text = `${shownText(other.name)}: keep ${formatLength(zone.atLeastMm, units)} away`;
    labels.push({ atMm: other.positionMm, text, tone: 'plain' });
  }
  if (bench.fit.get().roomsShown) {
    for (const { name, positionMm } of aircraft.bays ?? []) {
      labels.push({ atMm: positionMm, text: name, tone: 'plain' });
    }
    for (const { name, centreMm } of aircraft.hatches ?? []) {
      labels.push({ atMm: centreMm, text: name, tone: 'plain' });
    }
  }
  if (bench.place.get().ballastShown) {
    const spots = aircraft.ballastSpots ?? usualSpots(aircraft);
    for (const { name, positionMm } of spots) labels.push({ atMm: positionMm, text: name, tone: 'plain' });
    for (const { name, minMm, maxMm } of ballastFreeZones(aircraft)) {
      labels.push({ atMm: lerp(minMm, maxMm, 0.5), text: `${shownText(name)}: no ballast`, tone: 'plain' });
    }
  }
  return labels;
}

/** Half way along the middle stretch of a lead. */
function middleOf(pathMm: readonly Vec3[]): Vec3 {
  const at = Math.floor((pathMm.length - 1) / 2);
  return lerp(pathMm[at] ?? [0, 0, 0], pathMm[at + 1] ?? pathMm[at] ?? [0, 0, 0], 0.5);
}
