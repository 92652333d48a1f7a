import type { WordId } from '../../../model/glossary/glossary';
import { balanceDrawings } from './balanceDrawings';
import { benchDrawings } from './benchDrawings';
import { fuelDrawings } from './fuelDrawings';
import { wingDrawings } from './wingDrawings';

/** One drawing for each word. */
export const drawings: Readonly<Record<WordId, () => React.JSX.Element>> = {
  ...balanceDrawings,
  ...wingDrawings,
  ...fuelDrawings,
  ...benchDrawings,
};
