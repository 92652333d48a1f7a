import { rootCarries } from '../../model/stability/hull';
import { useCommitted } from '../../store/react';
import { Choice } from '../fields/Choice';
import type { Lens } from './structureLens';

const answerOf = (value: string) => (['yes', 'no'] as const).find((answer) => answer === value);

/** What the geometry proposes, in words. */
function proposed(carry: number): string {
  if (carry === 1) return 'joined';
  return carry === 0 ? 'a gap' : `joined to ${Math.round(100 * carry)} %`;
}

/** Whether a surface's lift carries through the body from half to half; proposed by where its root stands. */
export function JoinsBodyField({ id, lens }: { readonly id: string; readonly lens: Lens<'surface'> }) {
  const carry = useCommitted(
    (aircraft) =>
      rootCarries(
        aircraft.structure.map((piece) =>
          piece.id === id && piece.kind === 'surface' ? { ...piece, joinsBody: undefined } : piece,
        ),
      )[id],
  );
  const apart = useCommitted((aircraft) => {
    const surface = lens.read(aircraft);
    return surface?.sides === 'both' && surface.rootMm[1] > 0;
  });
  if (!apart || carry === undefined) return null;
  return (
    <>
      <Choice
        label="Joins the body"
        step={`Change whether ${lens.name} joins the body`}
        options={[
          { value: '', label: 'By its place' },
          { value: 'yes', label: 'Yes' },
          { value: 'no', label: 'No, a gap' },
        ]}
        read={(aircraft) => lens.read(aircraft)?.joinsBody ?? ''}
        write={(aircraft, to) => lens.change(aircraft, { joinsBody: answerOf(to) })}
      />
      <p className="hint">By its place: {proposed(carry)}.</p>
    </>
  );
}
