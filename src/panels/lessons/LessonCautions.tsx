import type { Lesson } from '../../model/lessons/types';
import { cautions } from '../../model/words/cautions';

/** What to heed before the same is done to a real aircraft: in one line, and in full when it is opened. */
export function LessonCautions({ ids }: { readonly ids: Lesson['cautions'] }) {
  const heeded = cautions.filter(({ id }) => ids.includes(id));
  if (heeded.length === 0) return null;
  return (
    <details className="lesson-cautions">
      <summary>Before you do this to a real aircraft: {heeded.map(({ about }) => about).join(' · ')}</summary>
      <dl>
        {heeded.map(({ id, about, says }) => (
          <div key={id}>
            <dt>{about}</dt>
            <dd>{says}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
