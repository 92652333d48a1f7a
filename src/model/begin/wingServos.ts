import { tenth } from './airframeAsk';
import type { Arrangement } from './arrangements';
import { wingWaterlineMm } from './bodyPlan';
import type { Things } from './outfit';
import type { Tape } from './tape';
import { type Placed, part, type ThingsAsk } from './thing';

/** Half thickness of a four-digit section of unit chord at a share of it: Abbott and von Doenhoff (from memory). */
function halfThickness(share: number, thicknessPct: number): number {
  const t = thicknessPct / 100;
  const s = Math.sqrt(share);
  return (
    5 * t * (0.2969 * s - 0.126 * share - 0.3516 * share ** 2 + 0.2843 * share ** 3 - 0.1015 * share ** 4)
  );
}

/** A servo in each half of the wing, where the wing is thick enough to hold it; else none, and the body has them. */
export function wingServos({ plan, tape, body, things }: ThingsAsk): readonly Placed[] {
  const spot = wingServoSpot(plan, tape, things);
  const name = things.bodyServos === 0 ? 'Elevon servo' : 'Aileron servo';
  const [long, , high] = things.servo.sizeMm;
  return (['right', 'left'] as const).map((side): Placed => {
    const sign = side === 'right' ? 1 : -1;
    const id = `${name.toLowerCase().replaceAll(' ', '-')}-${side}`;
    const words = `${name}, ${side}`;
    if (!spot) {
      const x = (body.bay.fromMm + body.bay.toMm) / 2 + sign * (long / 2 + 1);
      return {
        family: 'servos',
        part: part(id, words, 'control', things.servo, [tenth(x), 0, body.upperFloorMm + high / 2]),
      };
    }
    const rise = spot.yMm * Math.tan((plan.dihedralDeg * Math.PI) / 180);
    const z = wingWaterlineMm(plan.id, body.heightMm) + rise;
    return {
      family: 'servos',
      part: part(id, words, 'control', things.servo, [spot.xMm, sign * spot.yMm, tenth(z)], {
        rollDeg: -sign * plan.dihedralDeg,
      }),
    };
  });
}

/** The outermost place, no farther than half of the half span, that holds a servo with some wood around it. */
function wingServoSpot(plan: Arrangement, tape: Tape, things: Things): { xMm: number; yMm: number } | null {
  const [long, wide, high] = things.servo.sizeMm;
  for (const share of [0.5, 0.45, 0.4, 0.35, 0.3, 0.25]) {
    const y = (share * tape.spanMm) / 2;
    const outShare = share + wide / tape.spanMm;
    const chord = tape.rootChordMm + outShare * (tape.tipChordMm - tape.rootChordMm);
    const middle = 0.36;
    const thin = Math.min(
      ...[-1, 1].map((end) =>
        halfThickness(middle + (end * (long / 2 + wide / 6)) / chord, plan.thicknessPct),
      ),
    );
    if (2 * thin * chord < 1.15 * high || !(long < 0.5 * chord)) continue;
    const chordAt = tape.rootChordMm + share * (tape.tipChordMm - tape.rootChordMm);
    return { xMm: tenth(tape.wingAtMm + share * tape.sweepMm + middle * chordAt), yMm: tenth(y) };
  }
  return null;
}
