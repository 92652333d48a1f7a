import type { Vec3 } from '../../engine/geometry/types';
import type { Snapped } from '../../interaction/snap';
import { itemById } from '../../model/document/edit';
import { formatLength } from '../../model/units';
import type { Bench } from '../../store/bench';
import { layerShown } from '../../store/viewStore';

const VIEWS = {
  free: 'Free view',
  side: 'Side elevation',
  top: 'Top elevation',
  front: 'Front elevation',
} as const;

const readingOf = ({ document, view }: Bench, mm: Vec3) => {
  const { measureFromId, units } = view.getState();
  const zero = document.current().referencePoints.find(({ id }) => id === measureFromId)?.positionMm ?? [
    0, 0, 0,
  ];
  const figure = (axis: 0 | 1 | 2) => formatLength(mm[axis] - zero[axis], units);
  return { station: figure(0), buttline: figure(1), waterline: figure(2) };
};

/** Where stations are counted from, where that is not the datum. */
function fromWords({ document, view }: Bench): string {
  const { measureFromId } = view.getState();
  const point = document.current().referencePoints.find(({ id }) => id === measureFromId);
  return point ? ` from ${point.name}` : '';
}

/** The CG and where that is to the target band, without a full stop; null while nothing has a mass. */
function cgReading(bench: Bench): string | null {
  const { cgMm, band } = bench.balance.get();
  const { units } = bench.view.getState();
  if (!cgMm) return null;
  const cg = `CG at station ${readingOf(bench, cgMm).station}${fromWords(bench)}`;
  if (!band) return `${cg}; no target band is set`;
  const ahead = band.forwardMm - cgMm[0];
  const behind = cgMm[0] - band.aftMm;
  if (ahead > 0) return `${cg}, ${formatLength(ahead, units)} ahead of the target band`;
  if (behind > 0) return `${cg}, ${formatLength(behind, units)} behind the target band`;
  return `${cg}, in the target band`;
}

/** Whether the stage shows the CG: whoever hears the stage is told no more than it shows. */
const showsCg = ({ view }: Bench): boolean => layerShown(view.getState(), 'cg');

/** What a person who does not see the stage is told of it. */
export function stageSummary(bench: Bench): string {
  const { name } = bench.document.current();
  const { estimate, estimateFresh } = bench.balance.get();
  const where = VIEWS[bench.view.getState().view];
  if (!showsCg(bench)) return `${where} of ${name}.`;
  const cg = cgReading(bench);
  if (!cg) return `${where} of ${name}. Nothing has a mass yet, so there is no CG.`;
  const neutral =
    estimate && estimateFresh
      ? ` Estimated neutral point at station ${readingOf(bench, [estimate.neutralPointMm, 0, 0]).station}.`
      : '';
  return `${where} of ${name}. ${cg}.${neutral}`;
}

const CAUGHT = { grid: '', free: 'no snap', centreline: 'on the centre line', touching: 'touching' } as const;

/** The reading of what is being dragged: its place, what it caught on, and what it runs into. */
export function dragReading(bench: Bench, { positionMm, caught }: Snapped): string {
  const { station, buttline, waterline } = readingOf(bench, positionMm);
  const { itemId } = bench.drag.api.getState();
  const clash = itemId ? bench.fit.clashName(itemId) : '';
  const snap = caught.every((each) => each === 'free')
    ? CAUGHT.free
    : [...new Set(caught.filter((each) => each !== 'free').map((each) => CAUGHT[each]))]
        .filter(Boolean)
        .join(', ');
  const place = `station ${station}${fromWords(bench)} · buttline ${buttline} · waterline ${waterline}`;
  const notes = [snap, clash && `in the way of ${clash}`].filter(Boolean).join(' · ');
  return notes ? `${place} · ${notes}` : place;
}

/** What is said aloud when something has been moved and let go: where it stands now, with how many that went along, and what that did. */
export function movedReading(bench: Bench, itemId: string, along: number): string | null {
  const item = itemById(bench.document.current(), itemId);
  if (!item) return null;
  const { station, buttline, waterline } = readingOf(bench, item.positionMm);
  const clash = bench.fit.clashName(itemId);
  const into = clash ? `, in the way of ${clash}` : '';
  const cg = showsCg(bench) ? cgReading(bench) : null;
  const others = along > 0 ? `, with ${along} more,` : '';
  const place = `${item.name}${others} at station ${station}${fromWords(bench)}, buttline ${buttline}, waterline ${waterline}${into}.`;
  return cg ? `${place} ${cg}.` : place;
}
