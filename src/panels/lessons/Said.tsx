import { termsIn } from '../../model/lessons/lessonTerms';
import { Term } from '../Term';

/** A sentence of a lesson, with the words of the glossary to be asked for where they stand. */
export function Said({ children }: { readonly children: string }) {
  return termsIn(children).map(({ text, word }) =>
    word === null ? (
      text
    ) : (
      <Term key={word} of={word}>
        {text}
      </Term>
    ),
  );
}
