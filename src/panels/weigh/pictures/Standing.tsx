import { cosDeg, sinDeg } from '../../../engine/geometry/angle';
import type { Corner } from '../../../engine/geometry/polygon';
import type { Vec3 } from '../../../engine/geometry/types';
import { radiusAt } from '../../../model/weigh/wheels';
import { useCommitted } from '../../../store/react';
import { Airframe, CgMark, EDGE, Figures, fitted, useCorners } from './drawing';

/** A wheel or another support that the aircraft stands on. */
export interface Support {
  readonly atMm: Vec3;
  /** What the scale under it reads and should read, tare apart, g; null where it stands on no scale. */
  readonly scale: { readonly reads: number; readonly should: number | null } | null;
}

/** Height of a scale in the drawing, and room below it for its figures. */
const SCALE = 12;
const BELOW = 58;
/** What stands on its own ground is drawn no nearer to another than this, mm. */
const TOGETHER_MM = 20;

interface Layout {
  /** An aircraft's [station, waterline] on the drawing. */
  readonly at: (corner: Corner) => Corner;
  readonly groundY: number;
  readonly high: number;
  readonly contacts: readonly Corner[];
}

/** Where everything goes for an aircraft seen from the left that stands at a pitch, nose up +. */
export function useStanding(supports: readonly Support[], pitchDeg: number, mostHigh: number): Layout {
  const aircraft = useCommitted((committed) => committed);
  const corners = useCorners('side');
  const turned = ([x, z]: Corner): Corner => [
    x * cosDeg(pitchDeg) + z * sinDeg(pitchDeg),
    z * cosDeg(pitchDeg) - x * sinDeg(pitchDeg),
  ];
  const feet = supports.map(({ atMm }): Corner => {
    const [right, up] = turned([atMm[0], atMm[2]]);
    return [right, up - radiusAt(aircraft, atMm)];
  });
  const seen = [...corners.map(turned), ...feet];
  const { place } = fitted(seen, mostHigh);
  const contacts = feet.map(place);
  const groundY = Math.max(0, ...seen.map((corner) => place(corner)[1])) + SCALE;
  return { at: (corner) => place(turned(corner)), groundY, high: groundY + BELOW, contacts };
}

interface StandingProps {
  readonly supports: readonly Support[];
  readonly layout: Layout;
  /** [station, waterline]; left out where it is not known. */
  readonly listedMm: Corner | null;
  readonly weighedMm: Corner | null;
}

/** The aircraft from the left on whatever carries it: scales, blocks under what stands higher, and a chock where there is no scale. */
export function Standing({ supports, layout, listedMm, weighedMm }: StandingProps) {
  const { at, groundY, contacts } = layout;
  return (
    <>
      <path className="ground" d={`M${EDGE / 2} ${groundY}H${720 - EDGE / 2}`} />
      <Airframe view="side" at={at} />
      {supports.map((support, index) => {
        const [x, y] = contacts[index] ?? [0, 0];
        const foot = support.scale ? y + SCALE : y;
        return (
          <g key={support.atMm.join()} className={support.scale ? 'scale' : 'chock'}>
            {groundY - foot > 1 && (
              <rect className="block" x={x - 24} y={foot} width="48" height={groundY - foot} />
            )}
            {support.scale ? (
              <path d={`M${x - 22} ${y}h44l6 ${SCALE}h-56z`} />
            ) : (
              <path d={`M${x - 26} ${foot}l12 -14v14zM${x + 26} ${foot}l-12 -14v14z`} />
            )}
            {support.scale && <Figures x={x} y={groundY + 4} {...support.scale} />}
          </g>
        );
      })}
      {listedMm && <Plumb from={at(listedMm)} to={groundY} />}
      {listedMm && <CgMark kind="listed" at={at(listedMm)} />}
      {weighedMm && <CgMark kind="weighed" at={at(weighedMm)} />}
    </>
  );
}

const Plumb = ({ from: [x, y], to }: { readonly from: Corner; readonly to: number }) => (
  <path className="plumb" d={`M${x} ${y}V${to}`} />
);

/** Seen from the side, scales at one station stand behind each other and are drawn as one. */
export function oneBehindTheOther(supports: readonly Support[]): readonly Support[] {
  const groups: Support[] = [];
  for (const support of supports) {
    const index = groups.findIndex(({ atMm }) => Math.abs(atMm[0] - support.atMm[0]) < TOGETHER_MM);
    const before = groups[index];
    if (!before) groups.push(support);
    else groups[index] = { ...before, scale: together(before.scale, support.scale) };
  }
  return groups;
}

function together(a: Support['scale'], b: Support['scale']): Support['scale'] {
  if (!a || !b) return a ?? b;
  const should = a.should === null || b.should === null ? null : a.should + b.should;
  return { reads: a.reads + b.reads, should };
}
