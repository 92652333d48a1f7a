import type { Shape } from '../../engine/mass/shapes';
import type { Aircraft, Part, Role } from '../../model/document/types';

/** What a part's drawing depends on; where it stands is written into the drawing afterwards. */
export interface PartFacts {
  readonly id: string;
  readonly role: Role;
  readonly shape: Shape;
  readonly pitchDeg: number;
  readonly locked: boolean;
  readonly aircraft: Aircraft['kind'];
}

const factsOf = ({ id, role, shape, pitchDeg, locked }: Part, aircraft: Aircraft['kind']): PartFacts => ({
  id,
  role,
  shape,
  pitchDeg,
  locked: locked === true,
  aircraft,
});

const isSame = (facts: PartFacts | undefined, part: Part, aircraft: Aircraft['kind']): boolean =>
  facts !== undefined &&
  facts.id === part.id &&
  facts.shape === part.shape &&
  facts.role === part.role &&
  facts.pitchDeg === part.pitchDeg &&
  facts.locked === (part.locked === true) &&
  facts.aircraft === aircraft;

/** The facts of the parts that are seen: the very same list as before unless one of them looks different. */
export function createPartFacts(): (
  aircraft: Aircraft,
  hiddenIds: readonly string[],
) => readonly PartFacts[] {
  let kept: readonly PartFacts[] = [];
  return (aircraft, hiddenIds) => {
    const { kind } = aircraft;
    const parts =
      hiddenIds.length === 0 ? aircraft.parts : aircraft.parts.filter(({ id }) => !hiddenIds.includes(id));
    const same = parts.length === kept.length && parts.every((part, i) => isSame(kept[i], part, kind));
    if (!same) kept = parts.map((part, i) => (isSame(kept[i], part, kind) ? kept[i]! : factsOf(part, kind)));
    return kept;
  };
}
