import { useId, useState } from 'react';
import type { ShelfPart } from '../../model/airframe/shelf';
import { parseQuantity } from '../../model/units';
import { Icon } from '../icons';
import { useReadings } from '../readings';
import { type Ask, makers } from './makers';
import { sizeWords } from './sizeWords';

interface ShelfMakerProps {
  /** Whether a thing answers to what is searched for; null while nothing is. */
  readonly fits: ((text: string) => boolean) | null;
  readonly onAdd: (part: ShelfPart) => void;
}

/** A thing made from its class: its kind, a figure or two, and what such a thing usually weighs and measures. */
export function ShelfMaker({ fits, onAdd }: ShelfMakerProps) {
  const say = useReadings();
  const [picked, setKind] = useState('pack');
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const found = fits && answering(fits);
  if (fits && !found?.length) return null;
  const kind = !found || found.includes(picked) ? picked : found[0]!;
  const maker = makers.find(({ id }) => id === kind) ?? makers[0]!;
  const answers = Object.fromEntries(
    maker.asks.map((ask) => [ask.key, typed[`${kind} ${ask.key}`] ?? firstOf(ask)]),
  );
  const read = maker.asks.map((ask) => readAsk(ask, answers[ask.key] ?? ''));
  const fault = read.find((each) => typeof each === 'string') as string | undefined;
  const figures = Object.fromEntries(
    maker.asks.flatMap(({ key }, at) => (typeof read[at] === 'number' ? [[key, read[at]]] : [])),
  );
  const part = fault === undefined ? maker.make(answers, figures) : null;
  return (
    <section className="shelf-maker" aria-label="From its class" data-testid="shelf-maker">
      <div className="shelf-kinds" role="radiogroup" aria-label="Kind of thing">
        {makers.map(({ id, label }) => (
          <label key={id}>
            <input type="radio" name="shelf-kind" checked={kind === id} onChange={() => setKind(id)} />
            {label}
          </label>
        ))}
      </div>
      <div className="shelf-asks">
        {maker.asks.map((ask) => (
          <AskField
            key={`${kind} ${ask.key}`}
            ask={ask}
            value={answers[ask.key] ?? ''}
            onChange={(text) => setTyped({ ...typed, [`${kind} ${ask.key}`]: text })}
          />
        ))}
      </div>
      {part ? (
        <p className="shelf-made" aria-live="polite">
          <strong>{part.name}</strong>
          <span className="figure">
            {say.mass(part.massG)} ± {say.mass(part.plusMinusG ?? 0)}
          </span>
          <span className="figure">{sizeWords(part, say.length)}</span>
          <button type="button" className="button" onClick={() => onAdd(part)}>
            <Icon name="plus" /> Add it
          </button>
        </p>
      ) : (
        <p className="fault" role="alert">
          {fault}
        </p>
      )}
    </section>
  );
}

/** The kinds that answer to what is searched for. */
export const answering = (fits: (text: string) => boolean): readonly string[] =>
  makers
    .filter(({ id, label }) => fits(`${label} ${id}${id === 'pack' ? ' battery energy' : ''}`))
    .map(({ id }) => id);

const firstOf = (ask: Ask): string => ('options' in ask ? (ask.options[0]?.value ?? '') : String(ask.first));

/** The figure of an answer; null for words; a sentence where it cannot be. */
function readAsk(ask: Ask, text: string): number | string | null {
  if ('options' in ask) return null;
  const { label, unit, least, most, whole } = ask;
  const parsed = parseQuantity(text, { quantity: 'number', system: 'metric' });
  if (!parsed.ok) return `${label}: ${parsed.sentence}`;
  const { value } = parsed;
  if (value >= least && value <= most && (!whole || Number.isInteger(value))) return value;
  return `${label}: expected ${whole ? 'a whole number, ' : ''}${least} to ${most} ${unit}, got ${text}.`;
}

interface AskFieldProps {
  readonly ask: Ask;
  readonly value: string;
  readonly onChange: (text: string) => void;
}

function AskField({ ask, value, onChange }: AskFieldProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{ask.label}</label>
      <span className="entry">
        {'options' in ask ? (
          <select id={id} value={value} onChange={({ target }) => onChange(target.value)}>
            {ask.options.map((option) => (
              <option key={option.value} value={option.value}>
                {option.label}
              </option>
            ))}
          </select>
        ) : (
          <>
            <input
              id={id}
              type="text"
              inputMode="decimal"
              autoComplete="off"
              className="figure"
              value={value}
              onChange={({ target }) => onChange(target.value)}
            />
            <span className="suffix">{ask.unit}</span>
          </>
        )}
      </span>
    </div>
  );
}
