import { useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import { notesOn } from '../../engine/memory/memory';
import { shownText } from '../../model/document/names';
import type { Aircraft } from '../../model/document/types';
import type { FittingOrder } from '../../model/fit/fittingOrder';
import { attitudeName, isLevel } from '../../model/loads/attitude';
import type { Paper } from '../../model/sheet/paper';
import type { OrderSearch } from '../../model/sheet/parts';
import { type BuildSheet, buildSheet, type SheetInput } from '../../model/sheet/sheet';
import { useBalance, useBench, useCommitted, useFleet, useView } from '../../store/react';
import { useReadings } from '../readings';

/** The sheet of what is on the bench, put together after the page has been drawn; null before the first. */
export function useSheet(paper: Paper): { readonly sheet: BuildSheet | null; readonly search: OrderSearch } {
  const { verdict } = useBench();
  const aircraft = useCommitted((committed) => committed);
  const shown = useBalance((balance) => balance);
  const judgement = useSyncExternalStore(verdict.subscribe, verdict.judgement);
  const plusMinusG = useSyncExternalStore(verdict.subscribe, verdict.massPlusMinusG);
  const down = useView((view) => view.down);
  const held = useView(({ attitude }) => (isLevel(attitude) ? null : attitudeName(attitude)));
  const revision = useFleet(({ revisions }) => revisions.find(({ name }) => name !== null)?.name ?? null);
  const leftOut = useView(({ sheet }) => sheet.leftOut);
  const choice = useView(({ sheet }) => sheet.balancing);
  const buttlineMm = useView(({ sheet }) => sheet.buttlineMm);
  const readings = useReadings();
  const search = useOrder(aircraft);
  const input = useMemo((): SheetInput => {
    const mass = { massG: shown.massG, plusMinusG };
    const { from } = readings;
    return {
      aircraft,
      shown,
      judgement,
      down,
      held,
      revision: revision === null ? null : shownText(revision),
      mass,
      say: readings,
      from,
      search,
      paper,
      choice,
      buttlineMm,
      leftOut,
    };
  }, [
    aircraft,
    shown,
    judgement,
    plusMinusG,
    down,
    held,
    revision,
    readings,
    search,
    paper,
    choice,
    buttlineMm,
    leftOut,
  ]);
  return { sheet: useLater(input), search };
}

/** How long nothing must change before the sheet is put together again, ms. */
const REST_MS = 60;

function useLater(input: SheetInput): BuildSheet | null {
  const [sheet, setSheet] = useState<BuildSheet | null>(null);
  const [failure, setFailure] = useState<unknown>(null);
  if (failure) throw failure;
  useEffect(() => {
    const timer = setTimeout(() => {
      try {
        setSheet(buildSheet(input));
      } catch (error) {
        setFailure(error);
      }
    }, REST_MS);
    return () => clearTimeout(timer);
  }, [input]);
  return sheet;
}

const orders = notesOn<Aircraft, FittingOrder>();
const NONE: OrderSearch = { state: 'none' };
const SEARCHING: OrderSearch = { state: 'searching' };

/** The order of fitting, with the ways in: looked for in a worker, once for each aircraft. */
function useOrder(aircraft: Aircraft): OrderSearch {
  const { fit } = useBench();
  const [found, setFound] = useState<{ readonly of: Aircraft; readonly search: OrderSearch } | null>(null);
  const wanted = (aircraft.hatches ?? []).length > 0;
  useEffect(() => {
    const searcher = wanted ? fit.search() : null;
    if (!searcher) return;
    let open = true;
    const tell = (search: OrderSearch) => open && setFound({ of: aircraft, search });
    const order = orders.get(aircraft);
    if (order) {
      tell({ state: 'found', order });
      return;
    }
    searcher.order(aircraft).then(
      (answer) => {
        if (answer) orders.set(aircraft, answer);
        tell(answer ? { state: 'found', order: answer } : NONE);
      },
      (error: unknown) =>
        tell({ state: 'failed', sentence: error instanceof Error ? error.message : String(error) }),
    );
    return () => {
      open = false;
      searcher.stop();
    };
  }, [aircraft, fit, wanted]);
  if (!wanted) return NONE;
  return found?.of === aircraft ? found.search : SEARCHING;
}
