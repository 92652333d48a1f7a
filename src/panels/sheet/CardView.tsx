import type { CSSProperties } from 'react';
import { CARD, type FieldCard } from '../../model/sheet/card';

/** The card for the field, with a line to cut it out by. */
export function CardView({ card }: { readonly card: FieldCard }) {
  const size = { width: `${CARD.wideMm}mm`, height: `${CARD.highMm}mm` } satisfies CSSProperties;
  return (
    <>
      <p className="sheet-note">Cut out along the dashed line.</p>
      <article className="field-card" style={size} data-testid="field-card">
        <h3>{card.title}</h3>
        {card.banner !== null && <p className="sheet-banner">{card.banner}</p>}
        <dl>
          {card.rows.map(({ id, label, value, note }) => (
            <div key={id}>
              <dt>{label}</dt>
              <dd>
                {value}
                {note !== undefined && <small>{note}</small>}
              </dd>
            </div>
          ))}
        </dl>
        <h4>{card.heading}</h4>
        <ul>
          {card.advice.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
        <footer>{card.foot}</footer>
      </article>
    </>
  );
}
