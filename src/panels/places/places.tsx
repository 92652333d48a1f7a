import type { ComponentType } from 'react';
import type { PlaceId } from '../../store/viewStore';
import { later } from '../later';

/** A place of its own beside the bench: it takes all the room under the answer. */
interface Place {
  readonly id: PlaceId;
  /** Null for one that is no part of the navigation: it is come to from elsewhere, and left for the bench. */
  readonly label: string | null;
  /** None for the bench itself, which is always there. */
  readonly Place: ComponentType<object> | null;
}

const meanwhile = <main className="place" />;

/** In the order of the navigation. */
const placesById: Readonly<Record<PlaceId, Omit<Place, 'id'>>> = {
  bench: { label: 'Bench', Place: null },
  power: {
    label: 'Power',
    Place: later(
      () => import('../power/Power'),
      (module) => module.Power,
      { place: 'Power', meanwhile },
    ),
  },
  'weigh-in': {
    label: 'Weigh-in',
    Place: later(
      () => import('../weigh/WeighIn'),
      (module) => module.WeighIn,
      { place: 'The weigh-in', meanwhile },
    ),
  },
  'build-sheet': {
    label: 'Sheet',
    Place: later(
      () => import('../sheet/BuildSheet'),
      (module) => module.BuildSheet,
      { place: 'The build sheet', meanwhile },
    ),
  },
  fleet: {
    label: 'Fleet',
    Place: later(
      () => import('../fleet/FleetPlace'),
      (module) => module.FleetPlace,
      { place: 'The fleet', meanwhile },
    ),
  },
  lessons: {
    label: 'Lessons',
    Place: later(
      () => import('../lessons/Lessons'),
      (module) => module.Lessons,
      { place: 'The lessons', meanwhile },
    ),
  },
  begin: {
    label: null,
    Place: later(
      () => import('../begin/Begin'),
      (module) => module.Begin,
      { place: 'New aircraft', meanwhile },
    ),
  },
  present: {
    label: null,
    Place: later(
      () => import('../present/Present'),
      (module) => module.Present,
      { place: 'The talk', meanwhile },
    ),
  },
  variants: {
    label: null,
    Place: later(
      () => import('../variants/Variants'),
      (module) => module.Variants,
      { place: 'The variants', meanwhile },
    ),
  },
};

export const places: readonly Place[] = (Object.keys(placesById) as PlaceId[]).map((id) => ({
  id,
  ...placesById[id],
}));
