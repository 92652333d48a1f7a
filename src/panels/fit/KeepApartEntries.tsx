import type { Aircraft, KeepApartRule } from '../../model/document/types';
import { defaultKeepApart } from '../../model/fit/keepApart';
import { useCommitted } from '../../store/react';
import { Choice } from '../fields/Choice';
import { EditButton } from '../fields/EditButton';
import { Measure } from '../fields/Measure';
import { TextEntry } from '../fields/TextEntry';
import { changedAt, EntryList, withoutAt } from './EntryList';
import { roleAndItemOptions, ruleWord } from './itemOptions';

const STEP = 'Change a rule of distance';

/** A rule that a person has changed is theirs, and no longer a habit of the trade. */
const change =
  (at: number, fields: Partial<KeepApartRule>) =>
  (aircraft: Aircraft): Aircraft => ({
    ...aircraft,
    keepApart: changedAt(aircraft.keepApart, at, { commonPractice: false, ...fields }),
  });

const another: KeepApartRule = {
  between: 'radio',
  and: 'powerplant',
  atLeastMm: 50,
  why: 'they disturb each other',
  commonPractice: false,
};

/** What must be kept apart. A file that says nothing goes by the usual rules, which can be taken over and changed. */
export function KeepApartEntries() {
  const stated = useCommitted(({ keepApart }) => keepApart !== undefined);
  return (
    <EntryList
      title="Keep apart"
      noun="rule"
      count={({ keepApart }) => keepApart?.length ?? 0}
      headOf={(aircraft, at) => {
        const rule = aircraft.keepApart?.[at];
        return rule
          ? `${ruleWord(aircraft, rule.between)} – ${ruleWord(aircraft, rule.and)}${
              rule.commonPractice ? ' (common practice)' : ''
            }`
          : '';
      }}
      add={(aircraft) => ({ ...aircraft, keepApart: [...(aircraft.keepApart ?? []), another] })}
      remove={(aircraft, at) => ({ ...aircraft, keepApart: withoutAt(aircraft.keepApart, at) })}
      more={
        <>
          <EditButton
            step="Take the usual rules"
            edit={(aircraft) => ({
              ...aircraft,
              keepApart: [...(aircraft.keepApart ?? []), ...defaultKeepApart],
            })}
          >
            Add the usual rules
          </EditButton>
          <p className="hint">
            {stated
              ? 'The usual rules are common practice, no source: what your radio’s maker says goes first.'
              : 'None of its own: the usual rules hold. They are common practice, no source; take them over to change them.'}
          </p>
        </>
      }
    >
      {(at) => <RuleFields at={at} />}
    </EntryList>
  );
}

function RuleFields({ at }: { readonly at: number }) {
  const aircraft = useCommitted((committed) => committed);
  const options = roleAndItemOptions(aircraft);
  const ends = [
    { key: 'between', label: 'Between' },
    { key: 'and', label: 'And' },
  ] as const;
  return (
    <>
      {ends.map(({ key, label }) => (
        <Choice
          key={key}
          label={label}
          step={STEP}
          options={options}
          read={({ keepApart }) => keepApart?.[at]?.[key] ?? ''}
          write={(now, value) => change(at, { [key]: value })(now)}
        />
      ))}
      <Measure
        label="At least"
        quantity="length"
        step={STEP}
        read={({ keepApart }) => keepApart?.[at]?.atLeastMm}
        write={(now, atLeastMm) => change(at, { atLeastMm })(now)}
      />
      <TextEntry
        label="Because"
        step={STEP}
        read={({ keepApart }) => keepApart?.[at]?.why}
        write={(now, why) => change(at, { why })(now)}
      />
    </>
  );
}
