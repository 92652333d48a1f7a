import { useEffect, useState } from 'react';
import { perObjects } from '../../engine/memory/memory';
import type { Aircraft } from '../../model/document/types';
import { clashesIn, clearances, hullFit } from '../../model/fit/clearances';
import type { Entry } from '../../model/fit/entryThroughAny';
import { useBench, useCommitted } from '../../store/react';
import { Icon } from '../icons';
import { usePathPlay } from './usePathPlay';

type Search =
  | { readonly state: 'searching' }
  | { readonly state: 'answered'; readonly entry: Entry }
  | { readonly state: 'failed'; readonly sentence: string };

const stuckIn = perObjects(
  (aircraft: Aircraft, id: string) => clashesIn(clearances(aircraft, id))[0]?.name ?? '',
);

const isInside = perObjects((aircraft: Aircraft, id: string) => hullFit(aircraft, id).place === 'inside');

/** Whether the item can go in through a hatch: looked for when asked, in a worker. */
export function EntryPath({ id, name }: { readonly id: string; readonly name: string }) {
  const { fit } = useBench();
  const aircraft = useCommitted((committed) => committed);
  const [search, setSearch] = useState<{ readonly of: Aircraft; readonly told: Search } | null>(null);
  useEffect(() => () => fit.search()?.stop(), [fit]);
  const hatches = aircraft.hatches?.length ?? 0;
  if (hatches === 0 || !isInside(aircraft, id)) return null;

  const blocker = stuckIn(aircraft, id);

  const look = async () => {
    const tell = (told: Search) => setSearch({ of: aircraft, told });
    tell({ state: 'searching' });
    try {
      const entry = await fit.search()?.entry(aircraft, id);
      if (entry) tell({ state: 'answered', entry });
      else setSearch(null);
    } catch (error) {
      tell({ state: 'failed', sentence: error instanceof Error ? error.message : String(error) });
    }
  };
  // An answer about the aircraft as it was before an edit is none.
  const told = search?.of === aircraft ? search.told : null;
  return (
    <div data-testid="entry">
      <h4>Way in</h4>
      {blocker !== '' && <p className="hint">Where it stands it is in {blocker}: nothing can go in there.</p>}
      {(told === null || told.state === 'failed') && blocker === '' && (
        <button type="button" className="button" onClick={look}>
          {told ? 'Retry' : 'Look for a way in'}
        </button>
      )}
      <div role="status">
        {told?.state === 'searching' && <p className="hint">Looking for a way in for {name}…</p>}
        {told?.state === 'failed' && <p className="clash">{told.sentence}</p>}
        {told?.state === 'answered' && !told.entry.found && <NotFound entry={told.entry} hatches={hatches} />}
        {told?.state === 'answered' && told.entry.found && (
          <p>
            Goes in through{' '}
            {told.entry.hatchName.replace(/^\p{Lu}(?=\p{Ll})/u, (first) => `the ${first.toLowerCase()}`)}
            {told.entry.off.length > 0 && `, with ${told.entry.off.join(' and ')} off`}.
          </p>
        )}
      </div>
      {told?.state === 'answered' && told.entry.found && <Player id={id} poses={told.entry.poses} />}
    </div>
  );
}

interface NotFoundProps {
  readonly entry: Extract<Entry, { found: false }>;
  readonly hatches: number;
}

function NotFound({ entry: { tried, blockedBy }, hatches }: NotFoundProps) {
  return (
    <p className="fit-note">
      <Icon name="question" />
      <span>
        No path found. {tried.toLocaleString('en')} poses were tried
        {hatches > 1 ? ` through ${hatches} hatches` : ''}
        {blockedBy.length > 0 && `; in the way: ${blockedBy.join(', ')}`}. There may still be one.
      </span>
    </p>
  );
}

interface PlayerProps {
  readonly id: string;
  readonly poses: Extract<Entry, { found: true }>['poses'];
}

function Player({ id, poses }: PlayerProps) {
  const { at, playing, play, stop, show } = usePathPlay(id, poses);
  const still = matchMedia('(prefers-reduced-motion: reduce)').matches;
  return (
    <div className="fit-play">
      {at !== null && (
        <button type="button" className="button" onClick={stop}>
          <Icon name="cross" /> {playing ? 'Stop' : 'Put it back'}
        </button>
      )}
      {at === null && !still && (
        <button type="button" className="button" onClick={play}>
          <Icon name="play" /> Play the path
        </button>
      )}
      <input
        type="range"
        aria-label="Along the path, from outside to its place"
        min={0}
        max={poses.length - 1}
        value={at ?? poses.length - 1}
        onChange={(event) => {
          const step = Number(event.target.value);
          if (step === poses.length - 1) stop();
          else show(step);
        }}
      />
    </div>
  );
}
