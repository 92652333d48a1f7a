import type { Corner } from '../../../engine/geometry/polygon';
import type { OfReading } from '../../../model/weigh/measured';
import { axesOfView, type OutlineView } from '../../../model/weigh/outlines';
import type { SwungAxis } from '../../../model/weigh/swung';
import { readingOf } from '../../../model/weigh/weighIns';
import { useCommitted } from '../../../store/react';
import { useReadings } from '../../readings';
import { useListedCg } from '../useListedCg';
import { Airframe, CgMark, fitted, type Place, useCorners, WIDE } from './drawing';

const MOST_HIGH = 250;
/** Where the beam is that it hangs from, and where the aircraft begins below it. */
const BEAM = 22;
const TOP = 150;

interface Hung {
  readonly view: OutlineView;
  /** From what the view shows to how it hangs. */
  readonly turn: (corner: Corner) => Corner;
}

const asItIs = (corner: Corner): Corner => corner;

/** With the axis upright, turning about it: on its wheels, nose up, or wing tip up. */
const upright: Readonly<Record<SwungAxis, Hung>> = {
  yaw: { view: 'side', turn: asItIs },
  roll: { view: 'side', turn: ([x, z]) => [z, -x] },
  pitch: { view: 'top', turn: asItIs },
};

/** With the axis level and towards the eye, swinging below it. */
const pendulum: Readonly<Record<SwungAxis, Hung>> = {
  pitch: { view: 'side', turn: asItIs },
  roll: { view: 'behind', turn: asItIs },
  yaw: { view: 'top', turn: ([x, y]) => [y, -x] },
};

/** The aircraft as it hangs, with the lengths that were measured. */
export function SwingPicture({ id }: { readonly id: string }) {
  const reading = useCommitted((aircraft) => readingOf(aircraft, id, 'swing'));
  const cgMm = useListedCg(id);
  const hung = (reading?.how === 'compound' ? pendulum : upright)[reading?.axis ?? 'yaw'];
  const corners = useCorners(hung.view).map(hung.turn);
  const { place, perMm, high } = fitted(corners, MOST_HIGH, TOP);
  if (!reading || !cgMm) return null;
  const [right, up] = axesOfView[hung.view];
  const at: Place = (corner) => place(hung.turn(corner));
  const cg = at([cgMm[right], cgMm[up]]);
  const bottom = TOP + high;
  return (
    <figure className="scales-picture">
      <svg
        viewBox={`0 0 ${WIDE} ${bottom + 40}`}
        role="img"
        aria-label={`The aircraft hung up to swing in ${reading.axis}`}
      >
        <path className="beam-above" d={`M${cg[0] - 190} ${BEAM}h380`} />
        {reading.how === 'compound' ? (
          <Pendulum cg={cg} armMm={reading.apartMm} perMm={perMm}>
            <Airframe view={hung.view} at={at} />
          </Pendulum>
        ) : (
          <Threads reading={reading} cg={cg} perMm={perMm} bottom={bottom}>
            <Airframe view={hung.view} at={at} />
          </Threads>
        )}
        <CgMark kind="listed" at={cg} />
      </svg>
    </figure>
  );
}

interface ThreadsProps {
  readonly reading: OfReading<'swing'>;
  readonly cg: Corner;
  readonly perMm: number;
  readonly bottom: number;
  readonly children: React.ReactNode;
}

/** Two threads beside the CG, or three down to a plate; they are longer than the drawing has room for. */
function Threads({ reading, cg: [x, y], perMm, bottom, children }: ThreadsProps) {
  const say = useReadings();
  const { how, apartMm, threadMm } = reading;
  const two = how === 'bifilar';
  const half = Math.min(WIDE / 2 - 30, Math.max(8, (two ? apartMm / 2 : apartMm) * perMm));
  const ends = two ? [-half, half] : [-half, half * 0.35, half];
  const foot = two ? y : bottom + 10;
  return (
    <>
      <path className="axis-of-swing" d={`M${x} ${BEAM + 26}V${bottom + 6}`} />
      {ends.map((dx) => (
        <path key={dx} className="thread" d={`M${x + dx} ${BEAM}V${foot}`} />
      ))}
      {children}
      {!two && <path className="beam-above" d={`M${x - half - 14} ${foot}h${2 * half + 28}`} />}
      <path className="turning" d={`M${x - 46} 88a46 13 0 0 0 92 0m-9 -7l9 7l6 -10`} />
      <g className="measure">
        {apartMm > 0 && (
          <>
            <path d={`M${x - (two ? half : 0)} 56H${x + half}`} />
            <text x={x + (two ? 0 : half / 2)} y="50">
              {say.length(apartMm)}
            </text>
          </>
        )}
        {threadMm > 0 && (
          <text className="beside" x={x + half + 12} y={(BEAM + TOP) / 2 + 14}>
            {say.length(threadMm)}
          </text>
        )}
      </g>
    </>
  );
}

interface PendulumProps {
  readonly cg: Corner;
  readonly armMm: number;
  readonly perMm: number;
  readonly children: React.ReactNode;
}

/** From a knife edge above the CG; an arm that reaches out of the drawing is cut short. */
function Pendulum({ cg: [x, y], armMm, perMm, children }: PendulumProps) {
  const say = useReadings();
  const pivot = Math.max(BEAM + 6, y - armMm * perMm);
  return (
    <>
      <path className="hanger" d={`M${x} ${BEAM}V${pivot - 12}`} />
      {children}
      <path className="thread" d={`M${x} ${pivot}V${y}`} />
      <path className="knife-edge" d={`M${x} ${pivot}l-9 -14h18z`} />
      <path className="turning" d={`M${x - 64} ${y + 20}a120 120 0 0 0 128 0m-14 1l14 -1l-1 14`} />
      {armMm > 0 && (
        <text className="beside" x={x + 12} y={(pivot + Math.min(y, pivot + 90)) / 2}>
          {say.length(armMm)}
        </text>
      )}
    </>
  );
}
