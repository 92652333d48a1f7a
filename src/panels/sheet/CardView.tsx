import type { CSSProperties } from 'react';
import { CARD, type FieldCard } from '../../model/sheet/card';

/** A longer title stands in two lines of smaller letters. */
const FITS_LARGE = 30;
/** More rows than these, or a banner above them, ask for smaller letters. */
const ROOMY_ROWS = 6;

/** The card for the field, with a line to cut it out by. */
export function CardView({ card }: { readonly card: FieldCard }) {
  const size = { width: `${CARD.wideMm}mm`, height: `${CARD.highMm}mm` } satisfies CSSProperties;
  return (
    <>
      <p className="sheet-note">Cut out along the dashed line.</p>
      <article
        className="field-card"
        style={size}
        data-testid="field-card"
        data-dense={card.banner !== null || card.rows.length > ROOMY_ROWS || undefined}
      >
        <h3 data-long={card.title.length > FITS_LARGE || undefined}>{card.title}</h3>
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
