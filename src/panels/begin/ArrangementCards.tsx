import type { Corner } from '../../engine/geometry/polygon';
import { type Arrangement, type ArrangementId, arrangements } from '../../model/begin/arrangements';
import { arrangementPicture } from '../../model/begin/beginPicture';

interface ArrangementCardsProps {
  readonly chosen: ArrangementId;
  readonly onChoose: (id: ArrangementId) => void;
}

/** Every arrangement as it looks from above, drawn from the proportions that it begins with. */
export function ArrangementCards({ chosen, onChoose }: ArrangementCardsProps) {
  return (
    <fieldset className="begin-cards">
      <legend>How it is laid out</legend>
      {arrangements.map((arrangement) => (
        <label key={arrangement.id} title={arrangement.says}>
          <input
            type="radio"
            name="arrangement"
            checked={arrangement.id === chosen}
            onChange={() => onChoose(arrangement.id)}
          />
          <Picture of={arrangement} />
          <span>{arrangement.name}</span>
        </label>
      ))}
    </fieldset>
  );
}

const SIDE = 100;

/** Nose up, so large that the longer of span and length just fits. */
function Picture({ of }: { readonly of: Arrangement }) {
  const outlines = arrangementPicture(of);
  const corners = outlines.flatMap((outline) => outline.corners);
  const range = (axis: 0 | 1) => {
    const along = corners.map((corner) => corner[axis]);
    return [Math.min(...along), Math.max(...along)] as const;
  };
  const [[front, rear], [left, right]] = [range(0), range(1)];
  const scale = (SIDE - 6) / Math.max(rear - front, right - left);
  const at = ([station, buttline]: Corner) =>
    `${(SIDE / 2 + buttline * scale).toFixed(1)},${(SIDE / 2 + (station - (front + rear) / 2) * scale).toFixed(1)}`;
  return (
    <svg viewBox={`0 0 ${SIDE} ${SIDE}`} aria-hidden="true">
      {outlines.map(({ id, kind, corners: around }) => (
        <polygon key={id} data-kind={kind} points={around.map(at).join(' ')} />
      ))}
    </svg>
  );
}
