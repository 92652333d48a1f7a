import { useEffect, useMemo, useState } from 'react';
import type { Aircraft } from '../../model/document/types';
import { differencesOf } from '../../model/history/differences';
import { changeWords, memberWords } from '../../model/words/changeWords';
import type { Revision } from '../../store/fleetStore';
import { useBench, useCommitted } from '../../store/react';
import { Refusal } from '../fields/EditButton';
import { Rename } from '../fleet/Rename';
import type { FleetActions, Refused } from '../fleetActions';
import { useReadings } from '../readings';
import { whenWords } from '../when';
import { Figures } from './Figures';
import { ghostOf } from './ghostOf';
import { goBack } from './goBack';

interface ComparisonProps {
  readonly revision: Revision;
  readonly title: string;
  readonly others: readonly Revision[];
  readonly actions: FleetActions;
}

/** A revision against what is on the bench, or against another: in figures, in words, and as a ghost on the stage. */
export function Comparison({ revision, title, others, actions }: ComparisonProps) {
  const bench = useBench();
  const now = useCommitted((aircraft) => aircraft);
  const [against, setAgainst] = useState<number | null>(null);
  const [renaming, setRenaming] = useState(false);
  const [fault, setFault] = useState<Refused>(null);
  const then = useRevision(revision.key, actions);
  const other = useRevision(against, actions);
  const after = against === null ? now : other;
  useEffect(() => {
    if (then && typeof then !== 'string') bench.place.api.setState({ ghost: ghostOf(then, now) });
    return () => bench.place.api.setState({ ghost: null });
  }, [bench, then, now]);
  if (then === null || after === null) return null;
  if (typeof then === 'string' || typeof after === 'string')
    return <Refusal fault={typeof then === 'string' ? then : String(after)} />;
  return (
    <div className="comparison">
      <label className="comparison-with">
        against
        <select
          value={against ?? ''}
          onChange={(event) => setAgainst(event.target.value === '' ? null : Number(event.target.value))}
        >
          <option value="">what is on the bench</option>
          {others
            .filter(({ key }) => key !== revision.key)
            .map(({ key, name, why, atMs }) => (
              <option key={key} value={key}>
                {name ?? why}, {whenWords(atMs, Date.now())}
              </option>
            ))}
        </select>
      </label>
      <Figures then={then} after={after} afterIs={against === null ? 'On the bench' : 'The other'} />
      <Changes before={then} after={after} />
      <div className="comparison-ways">
        <button
          type="button"
          className="button strong"
          disabled={then === now}
          onClick={() => goBack(bench, title, then)}
        >
          Go back to this
        </button>
        <button type="button" className="button" onClick={() => setRenaming(true)}>
          {revision.name === null ? 'Name it' : 'Rename'}
        </button>
        <button
          type="button"
          className="button"
          onClick={async () => setFault(await actions.forgetRevision(revision.key))}
        >
          Delete
        </button>
      </div>
      {renaming && (
        <Rename
          label="Name of this revision"
          name={revision.name ?? ''}
          rename={(name) => actions.renameRevision(revision.key, name)}
          onDone={() => setRenaming(false)}
        />
      )}
      <Refusal fault={fault} />
    </div>
  );
}

/** A revision's aircraft once it is read, or why it does not read; null until then and for none. */
function useRevision(key: number | null, actions: FleetActions): Aircraft | string | null {
  const [read, setRead] = useState<{ readonly key: number; readonly as: Aircraft | string } | null>(null);
  useEffect(() => {
    if (key === null) return;
    let wanted = true;
    void actions.readRevision(key).then(
      (as) => wanted && setRead({ key, as }),
      (error: unknown) => wanted && setRead({ key, as: String(error) }),
    );
    return () => {
      wanted = false;
    };
  }, [key, actions]);
  return read?.key === key ? read.as : null;
}

/** From the revision to what it is held against, one line for each thing that is not alike. */
function Changes({ before, after }: { readonly before: Aircraft; readonly after: Aircraft }) {
  const say = useReadings();
  const differences = useMemo(() => differencesOf(before, after), [before, after]);
  const rest = memberWords(differences);
  if (differences.things.length === 0 && rest === null) return <p>Nothing has changed since.</p>;
  return (
    <ul className="comparison-changes">
      {differences.things.map((change) => (
        <li key={`${change.id} ${change.kind}`}>{changeWords(change, say)}</li>
      ))}
      {rest && <li>{rest}</li>}
    </ul>
  );
}
