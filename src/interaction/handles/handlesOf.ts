import { perObjects } from '../../engine/memory/memory';
import { neighboursOf } from '../../model/airframe/extent';
import { structureById } from '../../model/document/edit';
import type { Aircraft } from '../../model/document/types';
import type { View } from '../../store/viewStore';
import { dragNormal } from '../dragPlane';
import type { Handle, Shaped } from './handle';
import { hullHandles } from './hullHandles';
import { boomHandles, legHandles } from './pointHandles';
import { solidHandles } from './solidHandles';
import { surfaceHandles } from './surfaceHandles';

/** What can be reshaped by hand, by its id; a tank that is locked cannot. */
export function shapedById(aircraft: Aircraft, id: string): Shaped | null {
  const tank = aircraft.tanks.find((item) => item.id === id);
  if (tank) return tank.locked ? null : tank;
  return structureById(aircraft, id) ?? null;
}

/** The handles of a thing; stations catch on the faces of what stands about it. The same list while nothing changes. */
export const handlesOf = (aircraft: Aircraft, thing: Shaped): readonly Handle[] =>
  tableFor(thing, neighbourStations(aircraft.parts, aircraft.tanks, aircraft.structure));

const neighbourStations = perObjects(
  (parts: Aircraft['parts'], tanks: Aircraft['tanks'], structure: Aircraft['structure']): readonly number[] =>
    neighboursOf({ parts, tanks, structure } as Aircraft, []).flatMap(({ minMm, maxMm }) => [
      minMm[0],
      maxMm[0],
    ]),
);

const tableFor = perObjects((thing: Shaped, catches: readonly number[]): readonly Handle[] => {
  if (!('kind' in thing)) return solidHandles(thing);
  switch (thing.kind) {
    case 'fuselage':
      return hullHandles(thing, catches);
    case 'surface':
      return surfaceHandles(thing, catches);
    case 'boom':
      return boomHandles(thing, catches);
    case 'leg':
      return legHandles(thing, catches);
    case 'block':
      return solidHandles(thing);
  }
});

/** The place of a thing whose handles are shown until another is touched: a hull's largest section, a surface's tip. */
export function firstPlace(thing: Shaped): number {
  if ('panels' in thing) return thing.panels.length;
  if ('sections' in thing) return thing.mesh ? 0 : largest(thing.sections);
  return 'shape' in thing && thing.shape.kind === 'loft' ? largest(thing.shape.sections) : 0;
}

function largest(sections: readonly { readonly widthMm: number; readonly heightMm: number }[]): number {
  const sizes = sections.map(({ widthMm, heightMm }) => widthMm * heightMm);
  return sizes.indexOf(Math.max(...sizes));
}

/** A handle that would move towards the eye, or nearly so, is left out: cos 25°. */
const TOWARDS_EYE = 0.9;

/** The handles that a view can show, those of one place and the main ones of all. */
export function shownHandles(all: readonly Handle[], view: View, place: number): readonly Handle[] {
  const eye = view === 'free' ? null : dragNormal(view, false);
  const seen = ({ axis }: Handle) =>
    !eye || Math.abs(axis[0] * eye[0] + axis[1] * eye[1] + axis[2] * eye[2]) < TOWARDS_EYE;
  const shown = all.filter((handle) => (handle.main || handle.place === place) && seen(handle));
  // Where there is no room for all, those of the place come first.
  return [...shown].sort((a, b) => Number(b.place === place) - Number(a.place === place));
}
