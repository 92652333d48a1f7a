import { breakPair } from '../../model/document/edit';
import { makePair, pairableWith, twinOf } from '../../model/document/twins';
import { useBench, useCommitted } from '../../store/react';
import { EditButton } from '../fields/EditButton';

interface PairFieldsProps {
  readonly id: string;
  readonly name: string;
}

/** The mirrored pair that a part or tank is one of, or could be: said, made and broken. Nothing for what stands alone. */
export function PairFields({ id, name }: PairFieldsProps) {
  const { view } = useBench();
  const twin = useCommitted((aircraft) => twinOf(aircraft, id));
  const other = useCommitted((aircraft) => pairableWith(aircraft, id));
  if (twin) {
    return (
      <div className="pair-fields" data-testid="pair">
        <p className="hint">
          A mirrored pair with{' '}
          <button
            type="button"
            className="link"
            onClick={() => view.setState({ selectedId: twin.id, groupIds: [] })}
          >
            {twin.name}
          </button>
          : what is done to one is done to the other.
        </p>
        <EditButton
          step={`Break the pair of ${name} and ${twin.name}`}
          edit={(aircraft) => breakPair(aircraft, id)}
        >
          Break the pair
        </EditButton>
      </div>
    );
  }
  if (!other) return null;
  return (
    <div className="pair-fields" data-testid="pair">
      <p className="hint">
        {other.name} stands on the other side. As a pair it becomes this one’s mirror image.
      </p>
      <EditButton
        step={`Pair ${name} with ${other.name}`}
        edit={(aircraft) => makePair(aircraft, id, other.id)}
      >
        Make them a pair
      </EditButton>
    </div>
  );
}
