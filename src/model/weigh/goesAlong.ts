import type { Vec3 } from '../../engine/geometry/types';
import { mirrorY } from '../../engine/geometry/vec3';
import type { CulpritKind, Hypothesis } from '../../engine/weigh/culpritHypotheses';
import type { ThoughtOf } from '../../engine/weigh/wholeResiduals';
import { leadMass, leadState } from '../airframe/leads';
import { itemById } from '../document/edit';
import type { Aircraft } from '../document/types';
import { applyCorrection, placeMeant } from './correction';
import type { Thought } from './thought';

const moves: Readonly<Record<CulpritKind, boolean>> = {
  mirrored: true,
  'place-times-ten': true,
  'place-unit': true,
  sign: true,
  'not-weighed': false,
  'mass-times-ten': false,
  'mass-unit': false,
  'not-aboard': false,
  forgotten: false,
};

/**
 * The things of a hypothesis with what goes along with the thing in question: a tank takes its liquid with it, a part or tank the
 * leads that end at it. The liquid keeps its place in the tank.
 */
export const goesAlong =
  (aircraft: Aircraft, { suspects, sources, dryIds }: Thought) =>
  (hypothesis: Hypothesis): readonly ThoughtOf[] => {
    const { kind, id, things } = hypothesis;
    const leads = (aircraft.leads ?? []).filter(({ from, to }) => from === id || to === id);
    const holds = (thing: ThoughtOf) => !dryIds.has(thing.id) && sources.get(thing.id) === id;
    if (leads.length === 0 && !things.some(holds)) return things;
    if (kind === 'not-aboard') {
      return things.map((thing) =>
        holds(thing) || leads.some((lead) => lead.id === thing.id)
          ? { ...thing, massG: 0, sigmaG: 0 }
          : thing,
      );
    }
    const was = suspects.find((suspect) => suspect.id === id)?.mass.cgMm;
    const is = things.find((thing) => thing.id === id)?.positionMm;
    const item = itemById(aircraft, id);
    if (!moves[kind] || !was || !is || !item) return things;
    const by = is.map((at, axis) => at - was[axis]!) as unknown as Vec3;
    const mirrored = kind === 'mirrored';
    const positionMm = placeMeant(item.positionMm, hypothesis);
    const after = applyCorrection(aircraft, { kind: 'place', id, positionMm, mirrored });
    return things.map((thing) => {
      if (holds(thing)) return { ...thing, positionMm: carried(thing.positionMm, by, mirrored) };
      const lead = leads.find((each) => each.id === thing.id);
      const state = lead && leadState(after, lead);
      const mass = state && leadMass(state);
      return mass?.cgMm ? { ...thing, massG: mass.massG, positionMm: mass.cgMm } : thing;
    });
  };

const carried = (at: Vec3, by: Vec3, mirrored: boolean): Vec3 =>
  mirrored ? mirrorY(at) : [at[0] + by[0], at[1] + by[1], at[2] + by[2]];
