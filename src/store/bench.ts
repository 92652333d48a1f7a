import type { Aircraft } from '../model/document/types';
import { type AxisStore, createAxisStore } from './axisStore';
import { type BalanceStore, createBalanceStore } from './balanceStore';
import { type CompareStore, createCompareStore } from './compareStore';
import { createDocumentStore, type DocumentStore } from './documentStore';
import { createDrag, type Drag } from './drag';
import { createEye, type Eye } from './eye';
import { createFitStore, type FitStore } from './fitStore';
import { createFleetStore, type FleetStore } from './fleetStore';
import { createMeshStore, type MeshStore } from './meshStore';
import { createNoticeStore, type NoticeStore } from './noticeStore';
import { createPictureDesk, type PictureDesk } from './pictures';
import { createPlaceStore, type PlaceStore } from './placeStore';
import { createReshape, type Reshape } from './reshape';
import { createRestStore, type RestStore } from './restStore';
import { settleEdit } from './settleEdit';
import { createStabilityStore, type StabilityStore } from './stabilityStore';
import { createTraceStore, type TraceStore } from './traceStore';
import { createVerdictStore, type VerdictStore } from './verdictStore';
import { createViewStore, lookAfresh, type ViewState, type ViewStore } from './viewStore';

/** Everything that one bench holds. Framework-free; made once, in main.tsx or in a test. */
export interface Bench {
  readonly document: DocumentStore;
  readonly view: ViewStore;
  readonly balance: BalanceStore;
  readonly stability: StabilityStore;
  readonly rest: RestStore;
  readonly verdict: VerdictStore;
  readonly axis: AxisStore;
  readonly eye: Eye;
  readonly drag: Drag;
  readonly reshape: Reshape;
  readonly fit: FitStore;
  readonly place: PlaceStore;
  readonly notice: NoticeStore;
  readonly fleet: FleetStore;
  readonly mesh: MeshStore;
  readonly compare: CompareStore;
  readonly trace: TraceStore;
  readonly pictures: PictureDesk;
}

export function createBench(aircraft: Aircraft, view: Partial<ViewState> = {}, fleetId?: string): Bench {
  const viewStore = createViewStore(view);
  const notice = createNoticeStore();
  const document = createDocumentStore(aircraft, fleetId, (before, next) =>
    settleEdit(before, next, viewStore.getState().editScope, notice),
  );
  const stability = createStabilityStore(document);
  document.api.subscribe((now, before) => {
    if (now.aircraftNumber !== before.aircraftNumber) lookAfresh(viewStore);
  });
  const balance = createBalanceStore(document, viewStore, stability);
  const rest = createRestStore(document, viewStore, balance);
  const fit = createFitStore(document, viewStore);
  const drag = createDrag(document, () => viewStore.getState().groupIds);
  const axis = createAxisStore();
  const place = createPlaceStore(document, viewStore, drag, balance);
  const fleet = createFleetStore();
  // Two sheets that lie in one place: the later one is seen.
  place.api.subscribe((now, before) => {
    if (now.open && !before.open) fleet.api.setState({ revisionsOpen: false });
  });
  fleet.api.subscribe((now, before) => {
    if (now.revisionsOpen && !before.revisionsOpen) place.api.setState({ open: false });
  });
  return {
    document,
    view: viewStore,
    balance,
    stability,
    rest,
    verdict: createVerdictStore({ document, view: viewStore, stability, balance, rest, fit }),
    axis,
    eye: createEye(),
    drag,
    reshape: createReshape(document),
    fit,
    place,
    notice,
    mesh: createMeshStore(),
    fleet,
    pictures: createPictureDesk(),
    trace: createTraceStore({ document, view: viewStore, axis }),
    compare: createCompareStore(document, viewStore),
  };
}
