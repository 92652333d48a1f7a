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
  const [search, setSearch] = useState<{ readonly of: Aircraft; readonly sought: Search } | null>(null);
  useEffect(() => () => fit.search()?.stop(), [fit]);
  const hatches = aircraft.hatches?.length ?? 0;
  if (hatches === 0 || !isInside(aircraft, id)) return null;

  const blocker = stuckIn(aircraft, id);

  const look = async () => {
    const show = (sought: Search) => setSearch({ of: aircraft, sought });
    show({ state: 'searching' });
    try {
      const entry = await fit.search()?.entry(aircraft, id);
      if (entry) show({ state: 'answered', entry });
      else setSearch(null);
    } catch (error) {
      show({ state: 'failed', sentence: error instanceof Error ? error.message : String(error) });
    }
  };
  // An answer about the aircraft as it was before an edit is none.
  const sought = search?.of === aircraft ? search.sought : null;
  return (
    <div data-testid="entry">
      <h4>Way in</h4>
      {blocker !== '' && <p className="hint">Where it stands it is in {blocker}: nothing can go in there.</p>}
      {(sought === null || sought.state === 'failed') && blocker === '' && (
        <button type="button" className="button" onClick={look}>
          {sought ? 'Retry' : 'Look for a way in'}
        </button>
      )}
      <div role="status">
        {sought?.state === 'searching' && <p className="hint">Looking for a way in for {name}…</p>}
        {sought?.state === 'failed' && <p className="clash">{sought.sentence}</p>}
        {sought?.state === 'answered' && !sought.entry.found && (
          <NotFound entry={sought.entry} hatches={hatches} />
        )}
        {sought?.state === 'answered' && sought.entry.found && (
          <p>
            Goes in through{' '}
            {sought.entry.hatchName.replace(/^\p{Lu}(?=\p{Ll})/u, (first) => `the ${first.toLowerCase()}`)}
            {sought.entry.off.length > 0 && `, with ${sought.entry.off.join(' and ')} off`}.
          </p>
        )}
      </div>
      {sought?.state === 'answered' && sought.entry.found && <Player id={id} poses={sought.entry.poses} />}
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
