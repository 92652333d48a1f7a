import type { ViewState } from '../../store/viewStore';

/** Until the view has layers, the marks of stability are left out. */
const SHOWN_WITHOUT_LAYERS = false;

/** Whether the neutral point, the mean chord and the estimate's band are drawn on the beam. */
export const stabilityShown = (view: ViewState): boolean => {
  const { layers } = view as { readonly layers?: { readonly stability: boolean } };
  return layers?.stability ?? SHOWN_WITHOUT_LAYERS;
};
