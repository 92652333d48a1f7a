import type { Camera } from 'three';
import type { TipChord } from '../../interaction/wingTip';
import { type Item, itemById } from '../../model/document/edit';
import type { Bench } from '../../store/bench';
import { type Hit, pick } from '../frame/picking';
import type { Place, StageFrame } from './stageFrame';
import { tipAt } from './tipGrip';

/** Around a fingertip, for things smaller than one, px. */
const FINGER_PX = 15;
/** How near to a tip chord takes it in hand, px. */
const TIP_PX = { mouse: 7, finger: 22 } as const;

/** What lies under a pointer: a thing, or the tip of a wing where no thing is in the way. */
export interface Reached {
  readonly hit: Hit | null;
  readonly item: Item | null;
  readonly tip: TipChord | null;
}

export type Reach = (at: Place, finger: boolean) => Reached;

export function createReach(bench: Bench, frame: StageFrame, camera: () => Camera): Reach {
  const pickAt = (at: Place) => pick(bench, camera(), frame.picture(at));
  /** A fingertip takes the nearest thing under it. */
  const pickNear = (at: Place, finger: boolean): Hit | null => {
    const straight = pickAt(at);
    if (!finger || straight?.kind === 'item') return straight;
    for (let i = 0; i < 8; i += 1) {
      const turn = (i * Math.PI) / 4;
      const near = pickAt([at[0] + FINGER_PX * Math.cos(turn), at[1] + FINGER_PX * Math.sin(turn)]);
      if (near?.kind === 'item') return near;
    }
    return straight;
  };
  return (at, finger) => {
    const hit = pickNear(at, finger);
    const item = hit?.kind === 'item' ? (itemById(bench.document.current(), hit.id) ?? null) : null;
    const tip = item
      ? null
      : tipAt(bench, { camera, sizePx: frame.size }, at, finger ? TIP_PX.finger : TIP_PX.mouse);
    return { hit, item, tip };
  };
}
