import type { Aircraft, Slide, SlideAgainst } from '../model/document/types';
import { chosenVariant } from '../model/document/variants';
import { downOf, isLevel, LEVEL_ATTITUDE } from '../model/loads/attitude';
import { keptPositions, type ShownState, stateToKeep } from '../model/talk/shown';
import type { Seen } from '../model/talk/slides';
import type { Bench } from './bench';
import { LAYERS, type Layers, LOOKS, type Looking, type ViewState } from './viewStore';

/** How the bench is looked at now, as a slide keeps it. */
export function seenNow({ document, view, eye }: Bench): Seen {
  const state = view.getState();
  const aircraft = document.api.getState().committed;
  const chosen = chosenVariant(aircraft);
  const gaze = eye.gaze();
  const { pitchDeg, rollDeg, forwardG } = state.attitude;
  const looking = LOOKS.filter((way) => state.looking[way]);
  return {
    view: state.view,
    ...(gaze && { eye: { ...gaze, atMm: [...gaze.atMm] as const } as NonNullable<Slide['eye']> }),
    fuel: state.fuelFraction,
    ...(!isLevel(state.attitude) && { attitude: { pitchDeg, rollDeg, forwardG } }),
    ...keptPositions(state.positions),
    layers: LAYERS.filter((layer) => state.layers[layer]),
    ...(looking.length > 0 && { looking }),
    ...(state.hiddenIds.length > 0 && { hidden: [...state.hiddenIds] }),
    ...(state.selectedId !== null && { selectedId: state.selectedId }),
    ...(chosen && { variantId: chosen.id }),
  };
}

/** What is on the bench now, for a slide to be held against later. */
export function stateNow({ document, view }: Bench): Omit<SlideAgainst, 'as' | 'name'> {
  const { positions, fuelFraction } = view.getState();
  return stateToKeep({ aircraft: document.api.getState().committed, positions, fuel: fuelFraction });
}

const switchedOn = <K extends string>(
  names: readonly K[],
  on: readonly string[],
): Readonly<Record<K, boolean>> =>
  Object.fromEntries(names.map((name) => [name, on.includes(name)])) as Record<K, boolean>;

/** What of a view a slide decides, with the state that it shows. */
export function viewOfSlide(slide: Slide, { aircraft, positions, fuel }: ShownState): Partial<ViewState> {
  const attitude = slide.attitude ?? LEVEL_ATTITUDE;
  const { pitchDeg, rollDeg, forwardG } = attitude;
  const held = isLevel(attitude) ? LEVEL_ATTITUDE : { pitchDeg, rollDeg, forwardG };
  const layers: Layers = switchedOn(LAYERS, slide.layers);
  const looking: Looking = switchedOn(LOOKS, slide.looking ?? []);
  return {
    view: slide.view,
    fuelFraction: fuel,
    playing: false,
    attitude: held,
    down: downOf(held),
    positions,
    layers,
    looking,
    hiddenIds: slide.hidden ?? [],
    groupIds: [],
    selectedId:
      slide.selectedId !== undefined && isAboard(aircraft, slide.selectedId) ? slide.selectedId : null,
  };
}

const isAboard = ({ parts, tanks, structure }: Aircraft, id: string): boolean =>
  [...parts, ...tanks, ...structure].some((thing) => thing.id === id);

/** Puts a state of a slide on a bench, with the slide's way of looking at it. */
export function showState(bench: Bench, slide: Slide, state: ShownState): void {
  if (bench.document.api.getState().committed !== state.aircraft) bench.document.follow(state.aircraft);
  bench.view.setState(viewOfSlide(slide, state));
}
