import { useState } from 'react';
import type { Aircraft, WeighIn } from '../../model/document/types';
import { freshLines, freshScales, freshStand, freshSwing, freshTilt } from '../../model/weigh/freshReadings';
import { addWeighIn } from '../../model/weigh/weighIns';
import { useBench } from '../../store/react';
import { Icon } from '../icons';
import { today } from './today';

interface Way {
  readonly label: string;
  readonly tells: string;
  readonly tool: string;
  readonly fresh: (aircraft: Aircraft, fuelPct: number, switches: WeighIn['switches']) => WeighIn['reading'];
}

/** The ways to weigh, the one that tells most first. */
const ways: readonly Way[] = [
  {
    label: 'On scales',
    tells: 'wheels on two scales or three: mass, CG along and across',
    tool: 'Scales',
    fresh: freshScales,
  },
  {
    label: 'Balance stand',
    tells: 'stand or fingertips, and hung by nose and tail: CG along, across',
    tool: 'Balance stand',
    fresh: freshStand,
  },
  {
    label: 'Lines',
    tells: 'hung up, or on two points askew: CG along, and its height or across',
    tool: 'Thread and plumb bob',
    fresh: freshLines,
  },
  {
    label: 'Tilted',
    tells: 'one scale, read level and tilted: CG along, and its height',
    tool: 'Scale and inclinometer',
    fresh: freshTilt,
  },
  {
    label: 'Swung',
    tells: 'on threads or as a pendulum: inertia in roll, pitch or yaw',
    tool: 'Threads and stopwatch',
    fresh: freshSwing,
  },
];

interface StartProps {
  /** Whether there is nothing else to look at. */
  readonly open: boolean;
  readonly onStart: (id: string) => void;
}

/** Starts a weigh-in, in the load state and at the fuel of the bench. */
export function Start({ open, onStart }: StartProps) {
  const bench = useBench();
  const [asked, setAsked] = useState(false);
  const start = ({ label, tool, fresh }: Way) => {
    const { fuelFraction, positions } = bench.view.getState();
    const aircraft = bench.document.api.getState().committed;
    const fuelPct = Math.round(fuelFraction * 100);
    const switches = Object.entries(positions).map(([switchId, positionId]) => ({ switchId, positionId }));
    const added = addWeighIn(aircraft, {
      date: today(),
      tool,
      fuelPct,
      switches,
      notes: '',
      reading: fresh(aircraft, fuelPct, switches),
    });
    bench.document.commit(`Start a weigh-in (${label.toLowerCase()})`, added.aircraft);
    setAsked(false);
    onStart(added.id);
  };
  if (!open && !asked) {
    return (
      <button type="button" className="button weigh-new" onClick={() => setAsked(true)}>
        <Icon name="plus" /> Weigh it
      </button>
    );
  }
  return (
    <div className="weigh-ways">
      <p>
        {open
          ? 'Nothing weighed yet. What you read is kept with the aircraft and held against the list.'
          : 'How?'}
      </p>
      {ways.map((way) => (
        <button key={way.label} type="button" className="button" onClick={() => start(way)}>
          <strong>{way.label}</strong>
          <span>{way.tells}</span>
        </button>
      ))}
      {!open && (
        <button type="button" className="link weigh-more" onClick={() => setAsked(false)}>
          Not now
        </button>
      )}
    </div>
  );
}
