import * as v from 'valibot';
import { about, choice, id } from '../../document/schema/fields';
import { figure, strict } from './fields';

/** What the bench shows by itself. Stations and limits in mm from the datum, aft +; buttlines right +. */
const shownEntries = {
  cgStation: strict({ of: v.literal('cgStation') }, 'the station of the CG, mm from the datum, aft +'),
  cgButtline: strict({ of: v.literal('cgButtline') }, 'how far off the middle the CG is, mm, right +'),
  margin: strict({ of: v.literal('margin') }, 'the static margin, % MAC; an estimate'),
  neutralPoint: strict(
    { of: v.literal('neutralPoint') },
    'the station of the neutral point, mm from the datum, aft +; an estimate',
  ),
  mass: strict({ of: v.literal('mass') }, 'the mass of all that is aboard, g'),
  inertia: strict(
    { of: v.literal('inertia'), about: choice(['roll', 'pitch', 'yaw']) },
    'the inertia about an axis through the CG, kg·m²',
  ),
  cgPlusMinus: strict(
    { of: v.literal('cgPlusMinus') },
    'what the station of the CG may be off by, mm: two standard uncertainties',
  ),
  liquid: strict({ of: v.literal('liquid'), tankId: id }, 'what is in a tank, ml'),
} as const;

const { cgStation, cgButtline, margin } = shownEntries;

/** What a part can be asked to bring about. */
const wanted = strict(
  {
    quantity: v.variant('of', [cgStation, cgButtline, margin]),
    value: about(figure, 'what it shall come to, in its own unit'),
  },
  'what shall come about',
);

/**
 * What a part must be for something to come about: its mass in g, or where it stands, mm. The engine solves for it on the
 * bench after the change.
 */
const partFor = strict(
  {
    of: v.literal('partFor'),
    itemId: about(id, 'the part, or an empty tank'),
    solve: about(choice(['mass', 'station', 'buttline']), 'what of it is looked for'),
    wanted,
  },
  'what a part must weigh, or where it must stand, for something to come about',
);

export const shownQuantity = v.variant('of', Object.values(shownEntries));
export const quantity = v.variant('of', [...Object.values(shownEntries), partFor]);
