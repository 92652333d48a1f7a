import './glossary.css';
import { useDeferredValue, useState } from 'react';
import { type Asked, type GlossaryWord, type WordId, wordOf, wordsWith } from '../../model/glossary/glossary';
import { Modal } from '../Modal';
import { drawings } from './drawings/drawings';

interface WordsProps {
  /** The word that is asked for; without it the list of all. */
  readonly first?: Asked;
  readonly onClose: () => void;
}

/** One word with its drawing, or the list of all words. */
export function Words({ first, onClose }: WordsProps) {
  const [shown, setShown] = useState<WordId | null>(first ? wordOf(first).id : null);
  if (shown === null) return <WordList onPick={setShown} onClose={onClose} />;
  // A dialog for each: the focus goes into it, and its name is read out.
  return <Word key={shown} word={wordOf(shown)} onPick={setShown} onClose={onClose} />;
}

interface WordProps {
  readonly word: GlossaryWord;
  readonly onPick: (id: WordId | null) => void;
  readonly onClose: () => void;
}

function Word({ word: { id, word, also, says, related }, onPick, onClose }: WordProps) {
  const Drawing = drawings[id];
  return (
    <Modal title={word} onClose={onClose}>
      <div className="word" data-testid="word" data-word={id}>
        <Drawing />
        <p className="word-says">{says.join(' ')}</p>
        {also.length > 0 && <p className="hint">Also: {also.join(', ')}</p>}
        <nav aria-label="Words close to it">
          {related.map((other) => (
            <button key={other} type="button" className="button" onClick={() => onPick(other)}>
              {wordOf(other).word}
            </button>
          ))}
          <button type="button" className="link" onClick={() => onPick(null)}>
            All words
          </button>
        </nav>
      </div>
    </Modal>
  );
}

interface WordListProps {
  readonly onPick: (id: WordId) => void;
  readonly onClose: () => void;
}

function WordList({ onPick, onClose }: WordListProps) {
  const [typed, setTyped] = useState('');
  const found = wordsWith(useDeferredValue(typed));
  return (
    <Modal title="Words" onClose={onClose} wide>
      <div className="word-list" data-testid="words">
        <input
          type="search"
          aria-label="Find a word"
          placeholder="Find a word"
          value={typed}
          onChange={({ target }) => setTyped(target.value)}
        />
        <p className="unseen" role="status">
          {found.length === 1 ? '1 word' : `${found.length} words`}
        </p>
        {found.length === 0 && <p className="hint">No word and no explanation has that in it.</p>}
        <ul>
          {found.map(({ id, word, says }) => (
            <li key={id}>
              <button type="button" onClick={() => onPick(id)}>
                <strong>{word}</strong>
                <span>{says[0]}</span>
              </button>
            </li>
          ))}
        </ul>
      </div>
    </Modal>
  );
}
