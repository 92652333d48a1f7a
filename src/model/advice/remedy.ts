import type { Vec3 } from '../../engine/geometry/types';
import { add } from '../../engine/geometry/vec3';
import { addPart, itemById, placeItem, removeItem, updatePart } from '../document/edit';
import type { Aircraft, Part } from '../document/types';
import type { Judgement } from '../judgement/types';

/** One change that a remedy makes. Plain data, in the figures that are spoken: mm and g. */
export type RemedyEdit =
  | { readonly do: 'move'; readonly id: string; readonly byMm: Vec3 }
  | { readonly do: 'weigh'; readonly id: string; readonly massG: number }
  | { readonly do: 'remove'; readonly id: string }
  | { readonly do: 'add'; readonly part: Omit<Part, 'id'>; readonly into: 'hull' | 'wing' };

export type RemedyKind =
  | 'reduce-ballast'
  | 'move'
  | 'move-pair'
  | 'move-two'
  | 'add-ballast'
  | 'tip-ballast'
  | 'clear';

/** Something that mends what is wrong, tried out before it is spoken. */
export interface Remedy {
  readonly kind: RemedyKind;
  /** In their order; together one step for undo. */
  readonly edits: readonly RemedyEdit[];
  /** What to do, with figures that are exactly those of the edits: "Move “Camera” 24 mm aft". */
  readonly words: string;
  /** The whole judgement once it is done. */
  readonly result: Judgement;
}

/** The aircraft with a remedy carried out; what is no longer aboard is left alone. */
export function applyRemedy(aircraft: Aircraft, { edits }: Pick<Remedy, 'edits'>): Aircraft {
  return edits.reduce(applyEdit, aircraft);
}

function applyEdit(aircraft: Aircraft, edit: RemedyEdit): Aircraft {
  switch (edit.do) {
    case 'move': {
      const item = itemById(aircraft, edit.id);
      return item ? placeItem(aircraft, edit.id, add(item.positionMm, edit.byMm)) : aircraft;
    }
    case 'weigh':
      return updatePart(aircraft, edit.id, { massG: edit.massG });
    case 'remove':
      return removeItem(aircraft, edit.id);
    case 'add':
      return addPart(aircraft, edit.part).aircraft;
  }
}
