import { switchesOf } from '../../model/airframe/loadSwitches';
import { itemById, structureById } from '../../model/document/edit';
import { BARE_AIRFRAME_ID } from '../../model/document/ids';
import { shownText } from '../../model/document/names';
import { changed, type LessonBench } from '../../model/lessons/bench';
import { measuredBy } from '../../model/lessons/goals';
import type { Change } from '../../model/lessons/types';
import { formatAngle, formatLength, formatMass, formatNumber, formatVolume } from '../../model/units';
import { useView } from '../../store/react';
import { setAttitude } from '../../store/viewStore';
import { SwitchSet } from '../loading/SwitchSet';
import type { SeatOfLesson } from './lessonBench';
import { Slide } from './Slide';
import { useNow } from './useNow';

interface StepControlsProps {
  readonly seat: SeatOfLesson;
  readonly from: LessonBench;
  /** One way to do the step: what it takes to go it is offered. */
  readonly way: readonly Change[];
}

/** What a step is done with, where it is not done on the stage itself. */
export function StepControls({ seat, from, way }: StepControlsProps) {
  const kinds = way.filter(
    (change, at) => way.findIndex((other) => controlOf(other) === controlOf(change)) === at,
  );
  return (
    <div className="lesson-controls">
      {kinds.map((change) => (
        <Control key={controlOf(change)} seat={seat} from={from} change={change} />
      ))}
    </div>
  );
}

/** Changes with the same control are one control. */
function controlOf(change: Change): string {
  switch (change.do) {
    case 'place':
    case 'mass':
    case 'takeOut':
    case 'plusMinus':
      return `${change.do} ${change.itemId}`;
    case 'shiftStructure':
      return `${change.do} ${change.pieceId}`;
    case 'start':
      return `${change.do} ${change.tankId}`;
    case 'switch':
      return `${change.do} ${change.switchId}`;
    case 'fuel':
    case 'hold':
    case 'solved':
      return change.do;
  }
}

interface ControlProps {
  readonly seat: SeatOfLesson;
  readonly from: LessonBench;
  readonly change: Change;
}

function Control({ seat, from, change }: ControlProps) {
  const now = useNow(seat);
  const units = useView((view) => view.units);
  const { bench } = seat;
  const commit = (label: string, made: Change) => {
    const { aircraft } = changed({ ...now, aircraft: bench.document.api.getState().committed }, [made]);
    bench.document.commit(label, aircraft);
  };
  const nameOf = (id: string) =>
    shownText(
      (itemById(now.aircraft, id) ?? structureById(now.aircraft, id))?.name ??
        (id === BARE_AIRFRAME_ID ? 'Bare airframe' : 'it'),
    );
  const [measured] = measuredBy(change, from, now);
  switch (change.do) {
    case 'fuel':
      return (
        <Slide
          name="Fuel left"
          least={0}
          most={100}
          step={1}
          value={now.fuelFraction * 100}
          say={(pct) => `${formatNumber(pct, 0)} %`}
          onSlide={(pct) => bench.view.setState({ fuelFraction: pct / 100, playing: false })}
        />
      );
    case 'hold': {
      const { attitude } = now;
      return (
        <>
          <Slide
            name="Nose up or down"
            least={-60}
            most={60}
            step={1}
            value={attitude.pitchDeg}
            say={(deg) => formatAngle(deg, { signed: true })}
            onSlide={(pitchDeg) => setAttitude(bench.view, { pitchDeg })}
          />
          {change.rollDeg !== undefined && (
            <Slide
              name="Right wing down or up"
              least={-60}
              most={60}
              step={1}
              value={attitude.rollDeg}
              say={(deg) => formatAngle(deg, { signed: true })}
              onSlide={(rollDeg) => setAttitude(bench.view, { rollDeg })}
            />
          )}
          {change.forwardG !== undefined && (
            <Slide
              name="Pushed forward"
              least={-3}
              most={3}
              step={0.1}
              value={attitude.forwardG}
              say={(g) => `${formatNumber(g, 1, true)} g`}
              onSlide={(forwardG) => setAttitude(bench.view, { forwardG })}
            />
          )}
        </>
      );
    }
    case 'switch':
      return <SwitchSet switches={switchesOf(now.aircraft).filter(({ id }) => id === change.switchId)} />;
    case 'mass':
      return (
        <Slide
          name={`Mass of ${nameOf(change.itemId)}`}
          least={0}
          most={roomFor(measured)}
          step={1}
          value={measured?.is ?? 0}
          say={(g) => formatMass(g, units)}
          onSlide={(massG) => commit(`Weigh ${nameOf(change.itemId)}`, { ...change, massG })}
        />
      );
    case 'plusMinus':
      return (
        <>
          {change.g !== undefined && (
            <Slide
              name={`± of ${nameOf(change.itemId)}`}
              least={0}
              most={Math.max(20, 2 * change.g)}
              step={0.5}
              value={measured?.is ?? 0}
              say={(g) => `±${formatMass(g, units, { fine: true })}`}
              onSlide={(g) =>
                commit(`Change the ± of ${nameOf(change.itemId)}`, {
                  do: 'plusMinus',
                  itemId: change.itemId,
                  g,
                })
              }
            />
          )}
          {change.mm !== undefined && (
            <Slide
              name={`± of the place of ${nameOf(change.itemId)}`}
              least={0}
              most={Math.max(20, 2 * change.mm)}
              step={0.5}
              value={measuredBy(change, from, now).at(-1)?.is ?? 0}
              say={(mm) => `±${formatLength(mm, units, { fine: true })}`}
              onSlide={(mm) =>
                commit(`Change the ± of the place of ${nameOf(change.itemId)}`, {
                  do: 'plusMinus',
                  itemId: change.itemId,
                  mm,
                })
              }
            />
          )}
        </>
      );
    case 'start':
      return (
        <Slide
          name={`In ${nameOf(change.tankId)} at the start`}
          least={0}
          most={roomFor(measured)}
          step={5}
          value={measured?.is ?? 0}
          say={(ml) => formatVolume(ml, units)}
          onSlide={(ml) => commit(`Fill ${nameOf(change.tankId)}`, { ...change, ml })}
        />
      );
    case 'shiftStructure': {
      const by = measured ? measured.is - measured.was : 0;
      const room = Math.max(100, Math.ceil(Math.abs(change.aftMm) / 50) * 100);
      return (
        <Slide
          name={`Move ${nameOf(change.pieceId)} forward or aft`}
          least={-room}
          most={room}
          step={5}
          value={by}
          say={(mm) => formatLength(mm, units, { signed: true })}
          onSlide={(to) => commit(`Move ${nameOf(change.pieceId)}`, { ...change, aftMm: to - by })}
        />
      );
    }
    case 'takeOut':
      return (
        <button
          type="button"
          className="button"
          disabled={!itemById(now.aircraft, change.itemId)}
          onClick={() => commit(`Take ${nameOf(change.itemId)} out`, change)}
        >
          Take out {nameOf(change.itemId)}
        </button>
      );
    case 'place':
    case 'solved':
      return null;
  }
}

/** A round end for a slider that leaves room beyond what it is and what it shall be. */
const roomFor = (measured: { readonly was: number; readonly shall: number } | undefined): number =>
  Math.max(100, Math.ceil(Math.max(measured?.was ?? 0, measured?.shall ?? 0) / 100 + 1) * 100);
