import type { BodyRole } from '../model/airframe/bodies';

/** How a role looks wherever it is drawn: a word, a colour, and an outline so that colour is not alone. */
export interface RoleLook {
  readonly label: string;
  /** A CSS colour. */
  readonly colour: string;
  /** SVG path one unit wide and high, standing on y = 0, its middle at x = 0. */
  readonly path: string;
  /** Share of the unit square that the outline fills, so that drawn area can go by mass. */
  readonly filled: number;
}

export const roleLooks: Readonly<Record<BodyRole, RoleLook>> = {
  energy: {
    label: 'energy',
    colour: 'var(--energy)',
    path: 'M-.5 0V-.86H-.2V-1H.2V-.86H.5V0Z',
    filled: 0.92,
  },
  radio: {
    label: 'radio',
    colour: 'var(--radio)',
    path: 'M-.5 0V-.5L0-1L.5-.5V0Z',
    filled: 0.75,
  },
  control: {
    label: 'control',
    colour: 'var(--control)',
    path: 'M0 0L.5-.5L0-1L-.5-.5Z',
    filled: 0.5,
  },
  powerplant: {
    label: 'powerplant',
    colour: 'var(--powerplant)',
    path: 'M-.25 0H.25L.5-.5L.25-1H-.25L-.5-.5Z',
    filled: 0.75,
  },
  payload: {
    label: 'payload',
    colour: 'var(--payload)',
    path: 'M-.5 0H.5V-1H-.5Z',
    filled: 1,
  },
  undercarriage: {
    label: 'undercarriage',
    colour: 'var(--undercarriage)',
    path: 'M0 0A.5.5 0 1 1 0-1A.5.5 0 1 1 0 0ZM0-.32A.18.18 0 1 0 0-.68A.18.18 0 1 0 0-.32Z',
    filled: 0.68,
  },
  ballast: {
    label: 'ballast',
    colour: 'var(--ballast)',
    path: 'M-.5 0L-.34-.76H-.16V-1H.16V-.76H.34L.5 0Z',
    filled: 0.72,
  },
  other: {
    label: 'other',
    colour: 'var(--other)',
    path: 'M-.5-.24L-.26 0H.26L.5-.24V-.76L.26-1H-.26L-.5-.76Z',
    filled: 0.88,
  },
  fuel: {
    label: 'tank',
    colour: 'var(--fuel)',
    path: 'M0-1C.1-.8.45-.62.45-.36A.45.36 0 0 1-.45-.36C-.45-.62-.1-.8 0-1Z',
    filled: 0.62,
  },
  airframe: {
    label: 'airframe',
    colour: 'var(--airframe)',
    path: 'M-.5 0H.5V-1H-.5Z',
    filled: 1,
  },
};
