import { COMMON_MARGINS } from '../../engine/wing/margin';
import { type MarginKind, marginKind, usualMargins } from '../../model/stability/marginKind';
import { changeStability, stabilitySettings } from '../../model/stability/stability';
import { useCommitted } from '../../store/react';
import { Choice } from '../fields/Choice';
import { EditButton } from '../fields/EditButton';
import { Measure } from '../fields/Measure';

const kindNames: Readonly<Record<MarginKind, string>> = {
  trainer: 'a trainer',
  sport: 'a sport aircraft',
  aerobatic: 'an aerobatic aircraft',
  glider: 'a glider',
  flyingWing: 'a flying wing',
  canard: 'a canard',
  jet: 'a jet',
  scale: 'a scale aircraft',
};

const kindOptions = Object.entries(kindNames).map(([value, label]) => ({ value, label }));

/** The static margin wanted, from which the estimate makes a band; what is usual is offered, as common practice. */
export function MarginFields() {
  const kind = useCommitted(marginKind);
  const { minPct, maxPct } = COMMON_MARGINS[kind];
  const taken = useCommitted((aircraft) => {
    const { marginRange } = stabilitySettings(aircraft);
    return marginRange?.minPct === minPct && marginRange.maxPct === maxPct;
  });
  const field = (of: 'minPct' | 'maxPct', label: string) => (
    <Measure
      label={label}
      quantity="ratio"
      step={`Change the ${label.toLowerCase()}`}
      read={(aircraft) => stabilitySettings(aircraft).marginRange?.[of]}
      write={(aircraft, value) =>
        changeStability(aircraft, {
          marginRange: {
            ...(stabilitySettings(aircraft).marginRange ?? usualMargins(aircraft)),
            [of]: value,
          },
        })
      }
      empty={{ means: 'none wanted', write: (aircraft) => changeStability(aircraft, { marginRange: null }) }}
    />
  );
  return (
    <>
      <Choice
        label="Flown as"
        step="Change the kind whose margin is usual"
        options={kindOptions}
        read={marginKind}
        write={(aircraft, to) => changeStability(aircraft, { kind: to as MarginKind })}
      />
      {field('minPct', 'Least margin')}
      {field('maxPct', 'Most margin')}
      {!taken && (
        <div className="usual-margin">
          <EditButton
            step="Take the usual margin"
            edit={(aircraft) => changeStability(aircraft, { marginRange: usualMargins(aircraft) })}
          >
            Take {minPct} to {maxPct} % MAC
          </EditButton>
          <p className="hint">Usual for {kindNames[kind]}: common practice, no more.</p>
        </div>
      )}
    </>
  );
}
