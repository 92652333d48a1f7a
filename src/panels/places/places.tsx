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
export const places: readonly Place[] = [
  { id: 'bench', label: 'Bench', Place: null },
  {
    id: 'power',
    label: 'Power',
    Place: later(
      () => import('../power/Power'),
      (module) => module.Power,
      { place: 'Power', meanwhile },
    ),
  },
  {
    id: 'weigh-in',
    label: 'Weigh-in',
    Place: later(
      () => import('../weigh/WeighIn'),
      (module) => module.WeighIn,
      { place: 'The weigh-in', meanwhile },
    ),
  },
  {
    id: 'build-sheet',
    label: 'Sheet',
    Place: later(
      () => import('../sheet/BuildSheet'),
      (module) => module.BuildSheet,
      { place: 'The build sheet', meanwhile },
    ),
  },
  {
    id: 'fleet',
    label: 'Fleet',
    Place: later(
      () => import('../fleet/FleetPlace'),
      (module) => module.FleetPlace,
      { place: 'The fleet', meanwhile },
    ),
  },
  {
    id: 'lessons',
    label: 'Lessons',
    Place: later(
      () => import('../lessons/Lessons'),
      (module) => module.Lessons,
      { place: 'The lessons', meanwhile },
    ),
  },
  {
    id: 'begin',
    label: null,
    Place: later(
      () => import('../begin/Begin'),
      (module) => module.Begin,
      { place: 'New aircraft', meanwhile },
    ),
  },
  {
    id: 'present',
    label: null,
    Place: later(
      () => import('../present/Present'),
      (module) => module.Present,
      { place: 'The talk', meanwhile },
    ),
  },
  {
    id: 'variants',
    label: null,
    Place: later(
      () => import('../variants/Variants'),
      (module) => module.Variants,
      { place: 'The variants', meanwhile },
    ),
  },
];
