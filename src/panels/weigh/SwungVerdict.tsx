import { swungAgainst } from '../../model/weigh/swung';
import { weighInById } from '../../model/weigh/weighIns';
import { airWords, inertiaFigure, LIST_SHAPES, swungSentence } from '../../model/words/swingWords';
import { useCommitted } from '../../store/react';
import { Differences } from './Differences';
import { FiguresTable } from './FiguresTable';

/** A swing against the inertia of the list. */
export function SwungVerdict({ id }: { readonly id: string }) {
  const swung = useCommitted((aircraft) => {
    const entry = weighInById(aircraft, id);
    return entry ? swungAgainst(aircraft, entry) : null;
  });
  if (!swung) return null;
  return (
    <section className="weigh-verdict" aria-label="Swing against list" data-testid="weigh-verdict">
      {swung.ok ? (
        <>
          <p className="weigh-sentence" data-agrees={swung.agrees} role="status">
            {swungSentence(swung)}
          </p>
          <Differences rows={[{ name: 'Inertia', predicted: swung.listed, measured: swung.swung }]} />
          <FiguresTable
            by="swing"
            rows={[
              {
                name: `In ${swung.axis}, kg·m²`,
                listed: inertiaFigure(swung.listed, false),
                measured: inertiaFigure(swung.swung, false),
              },
            ]}
          />
          <h3>Air</h3>
          <p>{airWords(swung)}</p>
          <p className="hint">{LIST_SHAPES}</p>
        </>
      ) : (
        <p className="weigh-sentence" role="status">
          {swung.sentence}
        </p>
      )}
    </section>
  );
}
