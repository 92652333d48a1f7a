import { useMemo } from 'react';
import { filled } from '../../model/lessons/fill';
import { lessonSheets } from '../../model/lessons/sums/sumSheets';
import { useView } from '../../store/react';
import { SheetView } from '../sums/SheetView';
import { Said } from './Said';
import type { Told } from './told';

interface SummedProps extends Told {
  readonly onDone: () => void;
}

/** The sum line by line, as the engine writes it. */
export function Summed({ lesson, reading, fillings, onDone }: SummedProps) {
  const units = useView((view) => view.units);
  const sheets = useMemo(() => lessonSheets(lesson, units), [lesson, units]);
  return (
    <>
      <div className="lesson-says">
        <h3 tabIndex={-1}>
          <Said>{filled(lesson.sum.intro, fillings, reading)}</Said>
        </h3>
        <div className="lesson-sums">
          {sheets.map(({ title, sheet }) => (
            <section key={title ?? ''} aria-label={title ?? 'The sum'}>
              {title && <h4>{title}</h4>}
              <SheetView title={title ?? lesson.title} sheet={sheet} />
            </section>
          ))}
        </div>
      </div>
      <div className="lesson-does">
        <p>
          <Said>{filled(lesson.sum.closing, fillings, reading)}</Said>
        </p>
        <p className="lesson-go">
          <button type="button" className="button strong lesson-next" onClick={onDone}>
            One more, on a new case
          </button>
        </p>
      </div>
    </>
  );
}
