import { layerShown, type ViewState } from '../../store/viewStore';

/** Whether the neutral point, the mean chord and the estimate's band are drawn on the beam. */
export const stabilityShown = (view: ViewState): boolean => layerShown(view, 'stability');
