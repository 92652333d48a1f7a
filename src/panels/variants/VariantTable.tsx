import { useMemo } from 'react';
import type { Aircraft } from '../../model/document/types';
import { chooseVariant, type Variant, variantsOf } from '../../model/document/variants';
import type { JudgedVariant } from '../../model/judgement/judgedVariant';
import { formatInertia } from '../../model/units';
import { bestWords } from '../../model/words/variantWords';
import { ballastG, type FactKey, type Verdict, verdict } from '../../model/words/verdict';
import { useBench, useCommitted, useCompare } from '../../store/react';
import { useReadings } from '../readings';
import { choose } from './VariantChoice';

const columns: readonly { readonly label: string; readonly fact?: FactKey }[] = [
  { label: 'Answer' },
  { label: 'Mass', fact: 'mass' },
  { label: 'Travel', fact: 'travel' },
  { label: 'Margin, estimated', fact: 'margin' },
  { label: 'Sideways', fact: 'sideways' },
  { label: 'Ballast' },
  { label: 'Roll, pitch, yaw, kg·m²' },
];

/** Every variant judged as the aircraft that it is, in every load state; a tap puts it on the bench. */
export function VariantTable() {
  const bench = useBench();
  const say = useReadings();
  const aircraft = useCommitted((committed) => committed);
  const { judged, failed } = useCompare((state) => state);
  const list = variantsOf(aircraft);
  const best = useMemo(() => bestWords(list, judged, say), [list, judged, say]);
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a narrow window scrolls it by keys */}
      <section className="variants-scroll" aria-label="All variants" tabIndex={0}>
        <table className="variants-table">
          <thead>
            <tr>
              <th scope="col">Variant</th>
              {columns.map(({ label }) => (
                <th key={label} scope="col">
                  {label}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {list.map((variant) => (
              <Row
                key={variant.id}
                aircraft={aircraft}
                variant={variant}
                judged={judged.get(variant.id) ?? null}
                failed={failed !== null}
                best={best?.best?.id === variant.id}
                onChoose={() => choose(bench, variant)}
              />
            ))}
          </tbody>
        </table>
      </section>
      <p className="variants-best" role="status">
        {failed ?? best?.sentence ?? 'Judging each in every load state …'}
      </p>
    </>
  );
}

interface RowProps {
  readonly aircraft: Aircraft;
  readonly variant: Variant;
  readonly judged: JudgedVariant | null;
  readonly failed: boolean;
  readonly best: boolean;
  readonly onChoose: () => void;
}

function Row({ aircraft, variant, judged, failed, best, onChoose }: RowProps) {
  const say = useReadings();
  const chosen = aircraft.variants?.chosenId === variant.id;
  const shown = useMemo(() => chooseVariant(aircraft, variant.id), [aircraft, variant.id]);
  const answer = useMemo(
    () =>
      judged && verdict(shown, judged.judgement, say, { mass: { massG: judged.massG, plusMinusG: null } }),
    [shown, judged, say],
  );
  return (
    <tr data-variant={variant.id} aria-current={chosen || undefined}>
      <th scope="row">
        <button type="button" aria-pressed={chosen} onClick={onChoose}>
          {variant.name}
        </button>
        {best && <span className="variants-tag">best</span>}
      </th>
      {columns.map(({ label, fact }) => (
        <td key={label} data-label={label} data-tone={toneOf(answer, label, fact)}>
          {answer && judged ? figureOf(answer, judged, shown, label, fact, say.mass) : failed ? '–' : '…'}
        </td>
      ))}
    </tr>
  );
}

function toneOf(answer: Verdict | null, label: string, fact: FactKey | undefined) {
  if (!answer) return undefined;
  if (fact) return answer.facts.find(({ key }) => key === fact)?.tone;
  return label === 'Answer' ? answer.tone : undefined;
}

function figureOf(
  answer: Verdict,
  { inertiaAboutCgGmm2: { xx, yy, zz } }: JudgedVariant,
  shown: Aircraft,
  label: string,
  fact: FactKey | undefined,
  mass: (g: number) => string,
): string {
  if (fact) return answer.facts.find(({ key }) => key === fact)?.value ?? 'none';
  if (label === 'Answer') return answer.headline;
  if (label === 'Ballast') return mass(ballastG(shown));
  return [xx, yy, zz].map((moment) => formatInertia(moment, { unit: false })).join(', ');
}
