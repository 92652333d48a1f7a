import { slideFigures } from '../../model/document/schema/talk';
import type { Slide, SlideFigure } from '../../model/document/types';
import { slideById, updateSlide } from '../../model/talk/slides';
import { formatNumber } from '../../model/units';
import { stateNow } from '../../store/bookmark';
import { useBench, useCommitted } from '../../store/react';
import { EditButton } from '../fields/EditButton';
import { Measure } from '../fields/Measure';
import { Pick } from '../fields/Pick';
import { TextEntry } from '../fields/TextEntry';
import { useEdit } from '../fields/useEdit';

const figureNames: Readonly<Record<SlideFigure, string>> = {
  verdict: 'Verdict',
  'cg-full': 'CG full',
  'cg-dry': 'CG dry',
  band: 'Band',
  travel: 'Travel',
  margin: 'Margin',
  sideways: 'Sideways',
  mass: 'Mass',
};

interface SlideFieldsProps {
  readonly slide: Slide;
  readonly number: number;
}

/** What is seldom changed about a slide. */
export function SlideFields({ slide, number }: SlideFieldsProps) {
  const { id } = slide;
  const edit = useEdit();
  const step = `Change slide ${number}`;
  const change = (fields: Parameters<typeof updateSlide>[2]) =>
    edit(step, (aircraft) => updateSlide(aircraft, id, fields));
  return (
    <div className="slide-fields">
      <fieldset>
        <legend>Written large</legend>
        {slideFigures.map((figure) => (
          <label key={figure} className="tick">
            <input
              type="checkbox"
              checked={slide.figures.includes(figure)}
              onChange={({ target }) =>
                change({
                  figures: slideFigures.filter((each) =>
                    each === figure ? target.checked : slide.figures.includes(each),
                  ),
                })
              }
            />
            {figureNames[figure]}
          </label>
        ))}
      </fieldset>
      <Burn slide={slide} step={step} />
      <Against slide={slide} step={step} />
      <TextEntry
        label="Note for the one who speaks"
        long
        read={() => slide.note}
        write={(aircraft, text) => updateSlide(aircraft, id, { note: text === '' ? undefined : text })}
        step={step}
      />
    </div>
  );
}

interface PieceProps {
  readonly slide: Slide;
  readonly step: string;
}

const FIRST_BURN = { to: 0, seconds: 8 } as const;

/** The tanks may empty while the slide is shown. */
function Burn({ slide: { id, burn }, step }: PieceProps) {
  const edit = useEdit();
  const hasTanks = useCommitted(({ tanks }) => tanks.length > 0);
  if (!hasTanks) return null;
  return (
    <div className="slide-burn">
      <label className="tick">
        <input
          type="checkbox"
          checked={burn !== undefined}
          onChange={({ target }) =>
            edit(step, (aircraft) =>
              updateSlide(aircraft, id, { burn: target.checked ? FIRST_BURN : undefined }),
            )
          }
        />
        Play the burn
      </label>
      {burn && (
        <>
          <Measure
            label="Down to"
            quantity="ratio"
            step={step}
            read={(aircraft) => {
              const to = slideById(aircraft, id)?.burn?.to;
              return to === undefined ? undefined : to * 100;
            }}
            write={(aircraft, pct) =>
              pct < 0 || pct > 100
                ? `Expected 0 to 100 % of the fuel, got ${formatNumber(pct, 1)} %.`
                : updateSlide(aircraft, id, { burn: { ...burn, to: pct / 100 } })
            }
          />
          <Measure
            label="In"
            quantity="number"
            suffix="s"
            step={step}
            read={(aircraft) => slideById(aircraft, id)?.burn?.seconds}
            write={(aircraft, seconds) => updateSlide(aircraft, id, { burn: { ...burn, seconds } })}
          />
        </>
      )}
    </div>
  );
}

const ways = [
  { value: 'none', label: 'Nothing' },
  { value: 'ghost', label: 'As a ghost' },
  { value: 'beside', label: 'Side by side' },
] as const;

/** What the slide is held against: the bench as it stood when this was chosen. */
function Against({ slide: { id, against }, step }: PieceProps) {
  const bench = useBench();
  const edit = useEdit();
  const choose = (as: (typeof ways)[number]['value']) =>
    edit(step, (aircraft) => {
      if (as === 'none') return updateSlide(aircraft, id, { against: undefined });
      const kept = against ?? { name: 'Before', ...stateNow(bench) };
      return updateSlide(aircraft, id, { against: { ...kept, as } });
    });
  return (
    <div className="slide-against">
      <Pick label="Compare" value={against?.as ?? 'none'} options={ways} onPick={choose} />
      {against && (
        <>
          <TextEntry
            label="Called"
            read={() => against.name}
            write={(aircraft, name) => updateSlide(aircraft, id, { against: { ...against, name } })}
            step={step}
          />
          <EditButton
            step={step}
            edit={(aircraft) =>
              updateSlide(aircraft, id, {
                against: { as: against.as, name: against.name, ...stateNow(bench) },
              })
            }
          >
            Take what is on the bench now
          </EditButton>
          <p className="hint">
            It keeps the variant, the switches, the fuel and where everything stands, so that what you move
            later is seen against it.
          </p>
        </>
      )}
    </div>
  );
}
