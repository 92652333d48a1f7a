import '../place/arrange.css';
import './revisions.css';
import { type FormEvent, use, useEffect, useState } from 'react';
import { shownText } from '../../model/document/names';
import { MOST_STEPS } from '../../model/history/packing';
import type { Revision } from '../../store/fleetStore';
import { useBench, useCommitted, useFleet, usePiece } from '../../store/react';
import { Refusal } from '../fields/EditButton';
import { FilesContext } from '../filesContext';
import type { FleetActions, Refused } from '../fleetActions';
import { Icon } from '../icons';
import { NotFetched } from '../trouble/NotFetched';
import { whenWords } from '../when';
import { Comparison } from './Comparison';

/** The earlier states of the aircraft on the bench, each to be held against it and brought back. */
export function RevisionsSheet() {
  const bench = useBench();
  const files = use(FilesContext);
  if (!files) throw new Error('The revisions need the files around them');
  const { piece: actions, failure } = usePiece(files.fleet);
  const name = useCommitted((aircraft) => aircraft.name);
  const close = () => bench.fleet.api.setState({ revisionsOpen: false });
  return (
    <div className="arrange revisions">
      <header>
        <h2>Revisions of {shownText(name)}</h2>
        <button type="button" className="button bare" aria-label="Close" onClick={close}>
          <Icon name="cross" />
        </button>
      </header>
      <div className="arrange-body">
        {failure && <NotFetched place="The revisions" onRetry={files.fleet.retry} />}
        {actions && <KeepNow actions={actions} />}
        {actions && <List actions={actions} />}
        <p className="hint">
          Kept by itself: how the aircraft came onto the bench, what was before a step that changes much, and
          what there is after 40 steps or ten minutes of work. The older they are, the fewer stay; those with
          a name all do. Undo reaches back over {MOST_STEPS} steps, across a reload too.
        </p>
      </div>
    </div>
  );
}

function KeepNow({ actions }: { readonly actions: FleetActions }) {
  const [name, setName] = useState('');
  const [fault, setFault] = useState<Refused>(null);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const refused = await actions.keepRevision(name);
    setFault(refused);
    if (refused === null) setName('');
  };
  return (
    <form className="rename" onSubmit={submit}>
      <input
        aria-label="Name of this revision"
        placeholder="What is this state?"
        value={name}
        onChange={(event) => setName(event.target.value)}
      />
      <button type="submit" className="button">
        Keep it
      </button>
      <Refusal fault={fault} />
    </form>
  );
}

function List({ actions }: { readonly actions: FleetActions }) {
  const bench = useBench();
  const revisions = useFleet((fleet) => fleet.revisions);
  const [chosen, setChosen] = useState<number | null>(null);
  useEffect(() => () => bench.place.api.setState({ ghost: null }), [bench]);
  if (revisions.length === 0) return <p className="hint">None yet. The first comes with the next change.</p>;
  return (
    <ol className="revision-list">
      {revisions.map((revision) => (
        <li key={revision.key} data-chosen={revision.key === chosen || undefined}>
          <button
            type="button"
            aria-expanded={revision.key === chosen}
            onClick={() => setChosen(revision.key === chosen ? null : revision.key)}
          >
            <strong>{titleOf(revision)}</strong>
            <time dateTime={new Date(revision.atMs).toISOString()}>
              {whenWords(revision.atMs, Date.now())}
            </time>
          </button>
          {revision.key === chosen && (
            <Comparison revision={revision} title={titleOf(revision)} others={revisions} actions={actions} />
          )}
        </li>
      ))}
    </ol>
  );
}

/** Its name, or why it was kept, as a title begins. */
export const titleOf = ({ name, why }: Revision): string =>
  name === null ? why.charAt(0).toUpperCase() + why.slice(1) || 'Kept by itself' : shownText(name);
