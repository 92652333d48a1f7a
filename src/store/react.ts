import {
  createContext,
  useCallback,
  useContext,
  useEffect,
  useRef,
  useState,
  useSyncExternalStore,
} from 'react';
import { shallow } from 'zustand/vanilla/shallow';
import { perObject } from '../engine/memory/memory';
import type { Balance } from '../model/balance/balance';
import type { Aircraft } from '../model/document/types';
import type { KeptBand } from '../model/judgement/bandToKeep';
import type { AxisState } from './axisStore';
import type { Bench } from './bench';
import type { CompareState } from './compareStore';
import type { FitState, FitStore } from './fitStore';
import type { FleetState } from './fleetStore';
import type { MeshInHand } from './meshStore';
import type { Piece, PieceState } from './piece';
import type { PlaceState } from './placeStore';
import type { RestState } from './restStore';
import { earAt } from './sharedEar';
import type { StabilityState } from './stabilityStore';
import type { TraceStore } from './traceStore';
import type { VerdictState } from './verdictStore';
import type { ViewState } from './viewStore';

/**
 * A selector whose list is the very same one while its entries are alike: the same things, or plain records that hold the
 * same. For the hooks below, which draw again whenever what they select is another thing.
 */
export function useSteadyList<S, T>(select: (from: S) => readonly T[]): (from: S) => readonly T[] {
  const last = useRef<readonly T[]>([]);
  return (from) => {
    const list = select(from);
    const alike =
      list.length === last.current.length && list.every((entry, i) => shallow(entry, last.current[i]));
    if (!alike) last.current = list;
    return last.current;
  };
}

/** The one place where the stores meet React. */
export const BenchContext = createContext<Bench | null>(null);

export function useBench(): Bench {
  const bench = useContext(BenchContext);
  if (!bench) throw new Error('useBench needs a BenchContext around it');
  return bench;
}

/** Selectors return primitives or references that stay the same while nothing changed. */
export function useAircraft<T>(select: (aircraft: Aircraft) => T): T {
  const { document } = useBench();
  return useSyncExternalStore(document.subscribe, () => select(document.current()));
}

/** The aircraft as last committed; a drag does not wake it. */
export function useCommitted<T>(select: (aircraft: Aircraft) => T): T {
  const { document } = useBench();
  const subscribe = useCallback(
    (listener: () => void) =>
      document.api.subscribe((now, before) => {
        if (now.committed !== before.committed) listener();
      }),
    [document],
  );
  return useSyncExternalStore(subscribe, () => select(document.api.getState().committed));
}

export function useView<T>(select: (view: ViewState) => T): T {
  const { view } = useBench();
  return useSyncExternalStore(view.subscribe, () => select(view.getState()));
}

export function useAxis<T>(select: (axis: AxisState) => T): T {
  const { axis } = useBench();
  return useSyncExternalStore(axis.subscribe, () => select(axis.getState()));
}

export function useBalance<T>(select: (balance: Balance) => T): T {
  const { balance } = useBench();
  return useSyncExternalStore(balance.subscribe, () => select(balance.get()));
}

export function useStability<T>(select: (stability: StabilityState) => T): T {
  const { stability } = useBench();
  return useSyncExternalStore(stability.subscribe, () => select(stability.get()));
}

export function useRest<T>(select: (rest: RestState) => T): T {
  const { rest } = useBench();
  return useSyncExternalStore(rest.subscribe, () => select(rest.get()));
}

export function useVerdict<T>(select: (state: VerdictState) => T): T {
  const { verdict } = useBench();
  return useSyncExternalStore(verdict.api.subscribe, () => select(verdict.get()));
}

export function useFit<T>(select: (fit: FitState) => T): T {
  const { fit } = useBench();
  return useSyncExternalStore(fit.subscribe, () => select(fit.get()));
}

/** Something of the judgement of fit, as it happens; as with the others a primitive, or what stays the very same. */
export function useFitOf<T>(select: (fit: FitStore) => T): T {
  const { document, view, fit } = useBench();
  const subscribe = useCallback(
    (listener: () => void) => {
      const off = [document.subscribe(listener), view.subscribe(listener), fit.subscribe(listener)];
      return () =>
        off.forEach((stop) => {
          stop();
        });
    },
    [document, view, fit],
  );
  return useSyncExternalStore(subscribe, () => select(fit));
}

export function usePlace<T>(select: (place: PlaceState) => T): T {
  const { place } = useBench();
  return useSyncExternalStore(place.subscribe, () => select(place.get()));
}

/** The mesh file that is being looked at, or null. */
export function useMeshInHand(): MeshInHand | null {
  const { mesh } = useBench();
  return useSyncExternalStore(mesh.subscribe, mesh.get);
}

/** Something of the drawings under the elevations; as with the others a primitive, or what stays the very same. */
export function useTrace<T>(select: (trace: TraceStore) => T): T {
  const { trace } = useBench();
  return useSyncExternalStore(trace.subscribe, () => select(trace));
}

export function useFleet<T>(select: (fleet: FleetState) => T): T {
  const { fleet } = useBench();
  return useSyncExternalStore(fleet.subscribe, () => select(fleet.get()));
}

export function useCompare<T>(select: (state: CompareState) => T): T {
  const { compare } = useBench();
  useEffect(compare.look, [compare]);
  return useSyncExternalStore(compare.api.subscribe, () => select(compare.api.getState()));
}

/** What a place is held against: the limits, and the margin that the verdict asks for; null without a band. */
export function useKeptBand(): KeptBand | null {
  const { place, balance } = useBench();
  return useSyncExternalStore(balance.subscribe, place.band);
}

/** A piece that is fetched from now on, and how far that is. */
export function usePiece<T>(piece: Piece<T>): PieceState<T> {
  useEffect(piece.want, [piece]);
  return useSyncExternalStore(piece.subscribe, piece.get);
}

/** Throws what went wrong outside React's rendering where React sees it, so that the boundary around the place does. */
export function useFail(): (error: unknown) => void {
  const [failure, setFailure] = useState<{ readonly error: unknown } | null>(null);
  if (failure) throw failure.error;
  return (error) => setFailure({ error });
}

/**
 * Runs `apply` now and whenever the balance or what is looked at changes, outside React's rendering: for
 * writing straight to an object of the scene or an attribute of a drawing.
 */
export function useLive(apply: (bench: Bench) => void): void {
  const bench = useBench();
  const latest = useRef(apply);
  latest.current = apply;
  const fail = useRef(useFail());
  useEffect(() => {
    const run = () => {
      try {
        latest.current(bench);
      } catch (error) {
        fail.current(error);
      }
    };
    run();
    return everythingDrawn(bench)(run);
  }, [bench]);
}

const everythingDrawn = perObject(({ balance, view, axis, place, fit }: Bench) =>
  earAt([balance, view, axis, place, fit]),
);
