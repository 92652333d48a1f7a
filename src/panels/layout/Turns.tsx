/** What is shown where the window has room for only some of the bench. */
export type Turn = 'stage' | 'beam' | 'manifest' | 'card';

const turns: readonly { readonly turn: Turn; readonly label: string }[] = [
  { turn: 'stage', label: 'Stage' },
  { turn: 'beam', label: 'Beam' },
  { turn: 'manifest', label: 'Manifest' },
  { turn: 'card', label: 'Card' },
];

interface TurnsProps {
  readonly turn: Turn;
  readonly onTurn: (turn: Turn) => void;
}

/** On narrow windows the places of the bench take turns. */
export function Turns({ turn, onTurn }: TurnsProps) {
  return (
    <nav className="turns" aria-label="Places of the bench">
      {turns.map((place) => (
        <button
          key={place.turn}
          type="button"
          className={`turn-${place.turn}`}
          aria-pressed={place.turn === turn}
          onClick={() => onTurn(place.turn)}
        >
          {place.label}
        </button>
      ))}
    </nav>
  );
}
