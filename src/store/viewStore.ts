import type { StoreApi } from 'zustand/vanilla';
import type { Vec3 } from '../engine/geometry/types';
import type { Face } from '../model/airframe/align';
import { AT_START, type Positions } from '../model/airframe/loadSwitches';
import { LEVEL } from '../model/balance/balance';
import { layers, looks, type views } from '../model/document/schema/talk';
import type { EditScope } from '../model/document/variants';
import { type BenchAttitude, downOf, LEVEL_ATTITUDE } from '../model/loads/attitude';
import { FIRST_CHOICES, FIRST_OF_AIRCRAFT, type SheetChoices } from '../model/sheet/choices';
import type { UnitSystem } from '../model/units';
import { createCalmStore } from './calmStore';

export type View = (typeof views)[number];
/** The bench itself, and the places that lie over it. */
export type PlaceId =
  | 'bench'
  | 'power'
  | 'variants'
  | 'weigh-in'
  | 'build-sheet'
  | 'fleet'
  | 'lessons'
  | 'begin'
  | 'present';
export type Theme = 'system' | 'light' | 'dark';

/** What the stage says beside the aircraft itself; each has one switch, and is remembered. */
export const LAYERS = layers;
/** Ways of looking into the aircraft, as they are named below. */
export const LOOKS = looks;
export type Layer = (typeof LAYERS)[number];
export type Layers = Readonly<Record<Layer, boolean>>;

/** Off until asked for, but for the answer itself. */
export const FIRST_LAYERS: Layers = {
  cg: true,
  stability: false,
  fit: false,
  leads: false,
  rooms: false,
  inertia: false,
};

/** The gestures that explain themselves on the stage, once each. */
export const LESSONS = ['drag', 'nudge', 'nearer'] as const;
export type Lesson = (typeof LESSONS)[number];

/** Ways of looking into the aircraft. */
export interface Looking {
  /** The left half is taken off at the plane of symmetry. */
  readonly cut: boolean;
  /** The skin is hardly there. */
  readonly xray: boolean;
  /** Things are drawn apart, for looking only: nothing moves. */
  readonly exploded: boolean;
  /** Only the aircraft, the disc and the band. */
  readonly quiet: boolean;
}

const FIRST_LOOKING: Looking = { cut: false, xray: false, exploded: false, quiet: false };

/** What is being looked at and how; none of it is the aircraft's. */
export interface ViewState {
  readonly view: View;
  readonly selectedId: string | null;
  /** Chosen together, the last of them `selectedId`; fewer than two are no group. Selecting by itself ends it. */
  readonly groupIds: readonly string[];
  readonly hoveredId: string | null;
  /** Left out of the stage's picture; they weigh what they weigh. */
  readonly hiddenIds: readonly string[];
  /** Usable liquid left at the moment shown, 1 full to 0 dry. */
  readonly fuelFraction: number;
  readonly playing: boolean;
  /** The chosen position of each switch by its id; a switch that is not named is in its first. */
  readonly positions: Positions;
  /** How the aircraft is held; set with `setAttitude`, which keeps `down` with it. */
  readonly attitude: BenchAttitude;
  /** Apparent down in the aircraft's frame. */
  readonly down: Vec3;
  readonly layers: Layers;
  readonly looking: Looking;
  /** What is seen to tilt in a climb: the aircraft over its mat, or the world under the aircraft. */
  readonly tilts: 'aircraft' | 'world';
  /** From above, all of a wide wing in a scale of its own, rather than the body true to scale. */
  readonly wholeSpan: boolean;
  readonly units: UnitSystem;
  /** The reference point that readings are shown from; null is the datum. */
  readonly measureFromId: string | null;
  readonly theme: Theme;
  /** What of an item its station is read and typed to. */
  readonly face: Face;
  /** Those that were shown already. */
  readonly learned: readonly Lesson[];
  /** Sections of a card that the person opened or folded, by their id. */
  readonly folds: Readonly<Record<string, boolean>>;
  /** How high what stands under the stage may be: windows that are not high keep it low, a phone that lies even lower. */
  readonly strip: 'roomy' | 'low' | 'lowest';
  /** For whom an edit is, on an aircraft with variants. */
  readonly editScope: EditScope;
  /** Where the person is. */
  readonly place: PlaceId;
  /** How the build sheet is made. */
  readonly sheet: SheetChoices;
}

export type ViewStore = StoreApi<ViewState>;

/** How an aircraft that has just come is looked at. */
const FIRST_LOOK = {
  selectedId: null,
  groupIds: [],
  hoveredId: null,
  hiddenIds: [],
  fuelFraction: 1,
  playing: false,
  positions: AT_START,
  attitude: LEVEL_ATTITUDE,
  down: LEVEL,
  measureFromId: null,
  editScope: 'this',
} as const;

export function createViewStore(initial: Partial<ViewState> = {}): ViewStore {
  const store = createCalmStore<ViewState>(() => ({
    ...FIRST_LOOK,
    view: 'free',
    layers: FIRST_LAYERS,
    looking: FIRST_LOOKING,
    tilts: 'aircraft',
    wholeSpan: false,
    units: 'metric',
    theme: 'system',
    face: 'middle',
    learned: [],
    folds: {},
    strip: 'roomy',
    place: 'bench',
    sheet: FIRST_CHOICES,
    ...initial,
  }));
  store.subscribe((now, before) => {
    if (now.groupIds.length > 0 && now.groupIds === before.groupIds && now.selectedId !== before.selectedId)
      store.setState({ groupIds: [] });
  });
  return store;
}

/** Another aircraft is looked at afresh; how it is shown (view, units, theme) stays as the person chose. */
export function lookAfresh(view: ViewStore): void {
  view.setState(({ sheet }) => ({
    ...FIRST_LOOK,
    sheet: { ...sheet, ...FIRST_OF_AIRCRAFT },
  }));
}

/** Whether an item is one of several that are chosen together. */
export function isOneOfSeveral(view: ViewStore, id: string): boolean {
  const { groupIds } = view.getState();
  return groupIds.length > 1 && groupIds.includes(id);
}

/** Held with a click, these keys choose several. */
export const choosesMore = (keys: {
  readonly shiftKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
}): boolean => keys.shiftKey || keys.ctrlKey || keys.metaKey;

/** Chooses an item together with what is chosen already, or no longer. The last chosen is what the others go by. */
export function toggleChosen(view: ViewStore, id: string): void {
  view.setState(({ groupIds, selectedId }) => {
    const chosen = groupIds.length > 0 ? groupIds : selectedId === null ? [] : [selectedId];
    const next = chosen.includes(id) ? chosen.filter((other) => other !== id) : [...chosen, id];
    return { groupIds: next, selectedId: next.at(-1) ?? null };
  });
}

/** Takes something out of the picture, or puts it back. */
export function toggleHidden(view: ViewStore, id: string): void {
  view.setState(({ hiddenIds }) => ({
    hiddenIds: hiddenIds.includes(id) ? hiddenIds.filter((each) => each !== id) : [...hiddenIds, id],
  }));
}

/** Chooses something about the build sheet. */
export function chooseSheet(view: ViewStore, change: Partial<SheetChoices>): void {
  view.setState(({ sheet }) => ({ sheet: { ...sheet, ...change } }));
}

/** Holds the aircraft another way; the liquid settles to it. */
export function setAttitude(view: ViewStore, change: Partial<BenchAttitude>): void {
  const attitude = { ...view.getState().attitude, ...change };
  view.setState({ attitude, down: downOf(attitude) });
}

/** Puts a switch in a position. */
export function setSwitch(view: ViewStore, switchId: string, positionId: string): void {
  view.setState(({ positions }) => ({ positions: { ...positions, [switchId]: positionId } }));
}

/** Shows or leaves out a layer of the stage. */
export function toggleLayer(view: ViewStore, layer: Layer): void {
  view.setState(({ layers }) => ({ layers: { ...layers, [layer]: !layers[layer] } }));
}

/** Looks into the aircraft another way, or as before. */
export function toggleLooking(view: ViewStore, way: keyof Looking): void {
  view.setState(({ looking }) => ({ looking: { ...looking, [way]: !looking[way] } }));
}

/** Whether a layer is drawn: quiet leaves only the CG. */
export const layerShown = ({ layers, looking }: ViewState, layer: Layer): boolean =>
  layers[layer] && (layer === 'cg' || !looking.quiet);
