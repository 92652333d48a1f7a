import { type ArrangementId, arrangements } from '../../model/begin/arrangements';
import { arrangementPicture } from '../../model/begin/beginPicture';
import { FromAbove } from '../outlines/FromAbove';

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
          <FromAbove outlines={arrangementPicture(arrangement)} wide={SIDE} high={SIDE} />
          <span>{arrangement.name}</span>
        </label>
      ))}
    </fieldset>
  );
}

const SIDE = 100;
