import type { Fuselage } from '../document/types';
import { type AirframeAsk, skinOf, tenth } from './airframeAsk';
import { wingWaterlineMm } from './bodyPlan';

/** The buttline of the nacelles: clear of the body by the propeller, mm. */
export function nacelleAtMm({ tape, body, things }: Pick<AirframeAsk, 'tape' | 'body' | 'things'>): number {
  return Math.round(Math.max(0.19 * tape.spanMm, body.widthMm / 2 + 0.56 * things.propeller.sizeMm[1]));
}

/** A nacelle from ahead of the wing to behind its thickest part; motor and controller stand in its even front. */
export function nacellePlan(ask: Pick<AirframeAsk, 'plan' | 'tape' | 'body' | 'things'>) {
  const { plan, tape, body, things } = ask;
  const y = nacelleAtMm(ask);
  const share = Math.min(1, y / (tape.spanMm / 2));
  const wingLeMm = tape.wingAtMm + share * tape.sweepMm;
  const insideMm = things.motor.sizeMm[0] + things.controller.sizeMm[0] + 6;
  const acrossMm = Math.max(...things.motor.sizeMm.slice(1)) + 2 * (body.skinMm + 2);
  const fromMm = Math.round(wingLeMm - Math.max(0.3 * tape.rootChordMm, 0.6 * insideMm));
  const waterlineMm = Math.round(
    wingWaterlineMm(plan.id, body.heightMm) + y * Math.tan((plan.dihedralDeg * Math.PI) / 180),
  );
  return {
    buttlineMm: y,
    fromMm,
    evenToMm: fromMm + insideMm + body.skinMm,
    acrossMm,
    waterlineMm,
    wingLeMm,
  };
}

export function nacelle(ask: AirframeAsk): Fuselage {
  const { buttlineMm, fromMm, evenToMm, acrossMm, waterlineMm, wingLeMm } = nacellePlan(ask);
  const toMm = Math.max(evenToMm + acrossMm, wingLeMm + 0.8 * ask.tape.rootChordMm);
  const across = (stationMm: number, share: number) => ({
    stationMm: tenth(stationMm),
    widthMm: tenth(acrossMm * share),
    heightMm: tenth(acrossMm * share),
    waterlineMm,
    roundness: 1,
  });
  return {
    id: 'nacelle',
    kind: 'fuselage',
    name: 'Nacelle',
    sides: 'both',
    buttlineMm,
    sections: [across(fromMm, 1), across(evenToMm, 1), across(toMm, 0.3)],
    skinMm: ask.body.skinMm,
    mass: skinOf(ask, 'body'),
  };
}
