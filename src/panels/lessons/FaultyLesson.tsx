import { shownText } from '../../model/document/names';
import { Modal } from '../Modal';

interface FaultyLessonProps {
  readonly faulty: { readonly fileName: string; readonly sentences: readonly string[] };
  readonly onClose: () => void;
}

/** Everything that is wrong with a lesson file, for whoever writes it. */
export function FaultyLesson({ faulty: { fileName, sentences }, onClose }: FaultyLessonProps) {
  const count = sentences.length;
  return (
    <Modal title="This lesson cannot be held" onClose={onClose} wide>
      <p>
        <strong>{shownText(fileName)}</strong> has {count === 1 ? 'one fault' : `${count} faults`}. The
        lessons of the list have not changed.
      </p>
      <ol className="lesson-faults">
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ol>
    </Modal>
  );
}
