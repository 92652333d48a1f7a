import type { StoreApi } from 'zustand/vanilla';
import { traceViews } from '../model/document/schema/traces';
import { headOf, type Laid, laidIn, withLaid, withoutLaid } from '../model/document/traces';
import type { Aircraft, Trace, TraceImage } from '../model/document/types';
import type { AxisStore } from './axisStore';
import { createCalmStore } from './calmStore';
import type { DocumentStore } from './documentStore';
import type { ViewStore } from './viewStore';

/** What the hand is asked for: both ends of a length, a level line, or to move the drawing. */
export type TraceStep = 'length' | 'level' | 'move';

export interface TraceState {
  /** Whether its sheet is open. */
  readonly open: boolean;
  readonly step: TraceStep | null;
  /** Places that were pointed at in this step: [across, upright], mm. */
  readonly points: readonly (readonly [number, number])[];
  /** Why the last thing that was tried was not done. */
  readonly fault: string | null;
  /** What is in hand, in its place of the moment. */
  readonly inHand: Laid | null;
  /** Drawings that are in no file, by the place of their aircraft in the fleet. */
  readonly loose: Readonly<Record<string, readonly Laid[]>>;
}

export interface TraceStore {
  readonly api: StoreApi<TraceState>;
  /** Told of whatever may change what is shown. */
  subscribe(listener: () => void): () => void;
  /** What lies under the elevation that is shown. */
  shown(): Laid | null;
  /** Whether that is in the file. */
  isKept(): boolean;
  setOpen(open: boolean): void;
  begin(step: TraceStep | null): void;
  point(at: readonly [number, number]): void;
  /** Lays an image under the elevation shown, in the middle of the picture. Whatever lay there goes. */
  lay(image: string): void;
  preview(trace: Trace | null): void;
  /** Lays it otherwise, as one step where it is in the file; a sentence is why it cannot be. */
  put(label: string, trace: Trace | string): boolean;
  keep(inFile: boolean): void;
  remove(): void;
}

const AT_REST = { step: null, points: [], fault: null, inHand: null } as const;
/** So much of the stage's width a new drawing takes, or of its height. */
const SHARE = 0.8;

interface Around {
  readonly document: DocumentStore;
  readonly view: ViewStore;
  readonly axis: AxisStore;
}

/** Drawings under the elevations, in the file or beside it, and the hand that lays them. */
export function createTraceStore({ document, view, axis }: Around): TraceStore {
  const api = createCalmStore<TraceState>(() => ({ open: false, ...AT_REST, loose: {} }));
  const here = (): Trace['view'] | null => {
    const { view: now } = view.getState();
    return now === 'free' ? null : now;
  };
  const committed = () => document.api.getState().committed;
  const looseHere = () => api.getState().loose[document.api.getState().fleetId] ?? [];
  const kept = (): Laid | null => {
    const now = here();
    return now && laidIn(document.current(), now);
  };
  const standing = (): Laid | null =>
    kept() ?? looseHere().find(({ trace }) => trace.view === here()) ?? null;
  const setLoose = (list: readonly Laid[]) =>
    api.setState(({ loose }) => ({ loose: { ...loose, [document.api.getState().fleetId]: list } }));
  const others = (of: Trace['view']) => looseHere().filter(({ trace }) => trace.view !== of);
  const rest = () => api.setState(AT_REST);

  /** An undo of keeping one in the file leaves it beside the file, whatever came of it since. */
  const takeBack = (was: Aircraft, is: Aircraft) => {
    for (const of of traceViews) {
      const laid = laidIn(was, of);
      const beside = looseHere().some(({ trace }) => trace.view === of);
      if (laid && !laidIn(is, of) && !beside) setLoose([...looseHere(), laid]);
    }
  };

  view.subscribe((now, before) => {
    if (now.view !== before.view) rest();
  });
  document.api.subscribe((now, before) => {
    if (now.aircraftNumber !== before.aircraftNumber) rest();
    else if (now.past.length < before.past.length) takeBack(before.committed, now.committed);
    else if (now.fleetId !== before.fleetId) {
      const list = api.getState().loose[before.fleetId];
      if (list) setLoose(list);
    }
  });

  /** Takes the place of what is shown, where that is kept now. */
  const replace = (label: string, laid: Laid) => {
    if (kept()) document.commit(label, withLaid(committed(), laid));
    else setLoose([...others(laid.trace.view), laid]);
  };

  return {
    api,
    subscribe: (listener) => {
      const off = [api, view, document.api].map((store) => store.subscribe(listener));
      return () => {
        for (const stop of off) stop();
      };
    },
    shown: () => {
      const { inHand } = api.getState();
      return inHand && inHand.trace.view === here() ? inHand : standing();
    },
    isKept: () => kept() !== null,
    setOpen: (open) => {
      if (open && here() === null) view.setState({ view: 'side' });
      if (open) view.setState({ place: 'bench' });
      api.setState({ ...AT_REST, open });
    },
    begin: (step) => api.setState({ ...AT_REST, step }),
    point: (at) => api.setState(({ points }) => ({ points: [...points.slice(0, 1), at], fault: null })),
    lay: (image) => {
      const now = here();
      if (!now) return;
      const picture: TraceImage = { view: now, image };
      const size = headOf(picture);
      if (!size) return;
      const axes = axis.getState();
      const across = now === 'front' ? axes.lateral : axes.station;
      const uprightMm = Math.abs(across.mmPerPx) * (now === 'top' ? axes.spanStretch : 1);
      const fits = Math.min(
        (SHARE * axes.widthPx * Math.abs(across.mmPerPx)) / size.widthPx,
        (SHARE * axes.heightPx * uprightMm) / size.heightPx,
      );
      const mmPerPx = Number((fits > 0 ? fits : 1).toPrecision(9));
      const leftPx = axes.widthPx / 2 - (size.widthPx * mmPerPx) / 2 / Math.abs(across.mmPerPx);
      const cornerMm = [
        Math.round(across.atLeftMm + leftPx * across.mmPerPx),
        Math.round(axes.middleMm[now] + (size.heightPx * mmPerPx) / 2),
      ] as const;
      const trace: Trace = { view: now, cornerMm, mmPerPx, turnDeg: 0, opacity: 0.7 };
      rest();
      replace(`Lay a drawing under the ${now} view`, { trace, picture });
    },
    preview: (trace) => {
      const laid = standing();
      api.setState({ inHand: laid && trace ? { ...laid, trace } : null });
    },
    put: (label, trace) => {
      const laid = standing();
      if (typeof trace === 'string' || !laid) {
        api.setState({ inHand: null, points: [], fault: typeof trace === 'string' ? trace : null });
        return false;
      }
      if (trace !== laid.trace) replace(label, { ...laid, trace });
      api.setState({ inHand: null, fault: null });
      return true;
    },
    keep: (inFile) => {
      const laid = standing();
      if (!laid || inFile === (kept() !== null)) return;
      const { view: of } = laid.trace;
      // Beside the file it stays as it is, so that undo finds it there.
      setLoose([...others(of), laid]);
      if (inFile) document.commit('Keep the drawing in the file', withLaid(committed(), laid));
      else document.commit('Take the drawing out of the file', withoutLaid(committed(), of));
    },
    remove: () => {
      const laid = standing();
      if (!laid) return;
      const { view: of } = laid.trace;
      rest();
      setLoose(others(of));
      if (kept()) document.commit('Remove the drawing', withoutLaid(committed(), of));
    },
  };
}
