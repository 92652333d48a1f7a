import { bestStation } from '../../engine/balance/band';
import { perObject } from '../../engine/memory/memory';
import { structureMass } from '../airframe/structureBodies';
import { balanceAt, LEVEL } from '../balance/balance';
import { blankAircraft } from '../document/blank';
import { placeItem } from '../document/edit';
import type { Aircraft, Fuel, StructurePiece } from '../document/types';
import { estimateStability } from '../stability/estimateStability';
import { likelyMarginKind, usualMargins } from '../stability/marginKind';
import { stabilityInput } from '../stability/stability';
import { airframePieces } from './airframePieces';
import { type Arrangement, type ArrangementId, arrangementOf } from './arrangements';
import { type BodyPlan, bodyPlan, tankSideMm } from './bodyPlan';
import { finishedKit, type Kit, sharesOf } from './finishedKit';
import { type ManualBand, withManualBand } from './manualBand';
import { type Things, thingsFor } from './outfit';
import { packBay, placedThings, tankOf } from './placedThings';
import {
  type Construction,
  carriedShare,
  type MotorKind,
  outfitShares,
  PETROL_G_PER_ML,
  PROPELLER_SHARE,
} from './proportions';
import { type Tape, type TypedTape, wholeTape, wingAreaMm2 } from './tape';
import { BAY_ID, PACK_ID, type ThingsAsk } from './thing';

/** All that a person says of an aircraft that is to begin. */
export interface Beginning {
  readonly arrangement: ArrangementId;
  readonly typed: TypedTape;
  readonly construction: Construction;
  readonly motor: MotorKind;
  /** Ready to fly, full tank and all, g; null where nobody knows, and then proportions say. */
  readonly massG: number | null;
  /** The airframe is finished and was weighed; null where it is estimated. */
  readonly kit: Kit | null;
  /** The CG limits of the manual; null where the neutral point is to say. */
  readonly band: ManualBand | null;
}

/** Where a cautious first place lies in a band: so far from its forward end to its aft one. */
const FIRST_IN_BAND = 0.4;

/**
 * A whole aircraft from an arrangement and the figures of a tape: airframe, what is carried, a bay for the pack, legs and
 * limits. The pack stands where the balance wants it, as far as its bay allows. Figures that were not typed are
 * proportions; they are estimates, and every part says so. The figures must be free of `tapeFaults`.
 */
export function beginAircraft(wish: Beginning): Aircraft {
  return packPlaced(shapedAircraft(wish));
}

/** That the body is too short for what goes in, in a sentence; null where there is room. */
export function roomFault(wish: Beginning): string | null {
  const { outfitG, airframeG, scale } = settledMasses(wish);
  const { body } = sized(wish, tapeOf(wish), outfitG, airframeG, scale);
  if (body.endMm >= body.leastMm) return null;
  return `What goes in the body needs ${body.leastMm} mm of it, from its nose, and it has ${Math.round(body.endMm)} mm.`;
}

/** The same with its pack at the front of the bay: quick enough to follow what is being typed. */
export function shapedAircraft(wish: Beginning): Aircraft {
  return withManualBand(assembled(wish, tapeOf(wish), settledMasses(wish)), wish.band);
}

/** How often mass and size are fitted to each other: the third time nothing moves by a part in five hundred. */
const ROUNDS = 2;

/** What the sizes follow from, g: the mass that the shares are of, the airframe's, and how heavy its skins are. */
interface Masses {
  readonly wholeG: number;
  readonly outfitG: number;
  readonly airframeG: number;
  readonly scale: number;
}

/** Ready to fly, of a wing so large, g, to begin the rounds with: 6 kg on a square metre. See `begin` in the tests. */
const firstMassG = (areaMm2: number) => 6000 * (areaMm2 / 1e6) ** 1.5;

/** The motor that the arrangement can have: the one wanted, or an electric one. */
export const motorOf = ({ arrangement, motor }: Pick<Beginning, 'arrangement' | 'motor'>): MotorKind =>
  motorsOf(arrangement).includes(motor) ? motor : 'electric';

/** An engine with its tank needs one body to stand in. */
export function motorsOf(id: ArrangementId): readonly MotorKind[] {
  const { drive, tail } = arrangementOf(id);
  const room = drive !== 'nacelles' && id !== 'powered-glider' && tail !== 'none';
  return room ? ['electric', 'petrol'] : ['electric'];
}

/** Masses that agree with each other: what is carried decides the size of the body, which decides what the airframe weighs. */
const settledMasses = perObject((wish: Beginning): Masses => {
  const tape = tapeOf(wish);
  const shares = outfitShares(wish.arrangement, motorOf(wish));
  const carried = carriedShare(shares);
  const inKit = wish.kit ? sharesOf(shares, wish.kit.contains) : 0;
  const wholeG = wholeMassG(wish, tape, carried, inKit);
  const outside = carried - inKit;
  const outfitG = wish.kit && outside > LEAST_SHARE ? (wholeG - wish.kit.massG) / outside : wholeG;
  const airframeG = wish.kit
    ? Math.max(0.3 * wish.kit.massG, wish.kit.massG - inKit * outfitG)
    : (1 - carried) * wholeG;
  // Where nothing was weighed, usual skins are what the mass was reckoned from.
  if (wish.massG === null && !wish.kit) return { wholeG, outfitG, airframeG, scale: 1 };
  const { structure } = sized(wish, tape, outfitG, airframeG, 1);
  const legsG = legMassG(structure);
  return {
    wholeG,
    outfitG,
    airframeG,
    scale: (airframeG - legsG) / (structureMass(structure).massG - legsG),
  };
});

/** Less than this is left where the weighed airframe contains all that is carried: rounding. */
const LEAST_SHARE = 1e-6;

/** What the aircraft weighs ready to fly, g: as typed, or as scales and proportions make it. */
export const readyToFlyG = (wish: Beginning): number => settledMasses(wish).wholeG;

const tapeOf = (wish: Beginning): Tape => wholeTape(wish.arrangement, wish.typed, motorOf(wish));

/** Ready to fly, g: as typed, or from the weighed airframe, or from what the construction usually weighs. */
function wholeMassG(wish: Beginning, tape: Tape, carried: number, inKit: number): number {
  const { massG, kit } = wish;
  if (massG !== null) return kit ? Math.max(massG, 1.05 * kit.massG) : massG;
  if (kit) return kit.massG / (1 - (carried - inKit));
  let whole = firstMassG(wingAreaMm2(wish.arrangement, tape));
  for (let round = 0; round < ROUNDS; round += 1) {
    const { structure } = sized(wish, tape, whole, (1 - carried) * whole, 1);
    whole = structureMass(structure).massG / (1 - carried);
  }
  return whole;
}

const legMassG = (structure: readonly StructurePiece[]) =>
  structureMass(structure.filter(({ kind }) => kind === 'leg')).massG;

interface Sized {
  readonly things: Things;
  readonly body: BodyPlan;
  readonly structure: readonly StructurePiece[];
  readonly side: number;
}

/** The largest propeller, mm: what the size of the aircraft asks for, less where booms stand beside it. */
function propellerMostMm(plan: Arrangement, tape: Tape, rootAreaMm: number): number {
  const usualMm = PROPELLER_SHARE * rootAreaMm * (plan.drive === 'nacelles' ? Math.SQRT1_2 : 1);
  return plan.tail === 'booms' ? Math.min(usualMm, 0.85 * tape.tailSpanMm) : usualMm;
}

/** Things of an aircraft of so many grams, the body around them, and the airframe with skins so much heavier than usual. */
function sized(wish: Beginning, tape: Tape, massG: number, airframeG: number, scale: number): Sized {
  const plan = arrangementOf(wish.arrangement);
  const rootAreaMm = Math.sqrt(wingAreaMm2(plan.id, tape));
  const things = thingsFor(plan, motorOf(wish), massG, propellerMostMm(plan, tape, rootAreaMm));
  const side = things.tank ? tankSideMm(things.tank.fuelG, PETROL_G_PER_ML) : 0;
  const body = bodyPlan(plan, { tape, things, construction: wish.construction, tankSideMm: side });
  const structure = airframePieces({
    plan,
    tape,
    body,
    things,
    construction: wish.construction,
    scale,
    airframeG,
  });
  return { things, body, structure, side };
}

/** The aircraft with all in it, before its pack is placed. */
function assembled(wish: Beginning, tape: Tape, { outfitG, airframeG, scale }: Masses): Aircraft {
  const plan = arrangementOf(wish.arrangement);
  const { things, body, structure, side } = sized(wish, tape, outfitG, airframeG, scale);
  const ask: ThingsAsk = { plan, tape, body, things, motor: motorOf(wish), tankSideMm: side };
  const placed = placedThings(ask);
  const tank = tankOf(ask);
  const aircraft: Aircraft = {
    ...blankAircraft(),
    name: `New ${plan.name.toLowerCase()}`,
    kind: motorOf(wish),
    datum: 'Nose of the body',
    referencePoints: referencePoints(wish.arrangement, tape, structure),
    lateralToleranceMm: Math.max(2, Math.round(0.003 * tape.spanMm)),
    structure: structure.map((piece) => withSources(piece, wish.typed)),
    fuel: tank && petrol(things),
    tanks: tank ? [tank] : [],
    parts: placed.map(({ part }) => part),
    bays: [packBay(ask)],
    gridMm: 1,
  };
  const kind = wish.arrangement === 'powered-glider' ? 'glider' : likelyMarginKind(aircraft);
  const kinded = { ...aircraft, stability: { kind } };
  const limited = wish.band
    ? kinded
    : { ...kinded, stability: { kind, marginRange: { ...usualMargins(kinded) } } };
  return wish.kit ? finishedKit(limited, wish.kit, placed) : limited;
}

/** What nobody weighed is assumed, and so are sizes but for those of a wing that a tape was laid to. */
function withSources(piece: StructurePiece, typed: TypedTape): StructurePiece {
  const taped = piece.kind === 'surface' && piece.role === 'wing' && typed.spanMm && typed.rootChordMm;
  return { ...piece, massFrom: 'assumed', sizeFrom: taped ? 'measured' : 'assumed' };
}

/** The points that a tape reaches and that manuals measure from. */
function referencePoints(
  id: ArrangementId,
  { wingAtMm, rootChordMm, lengthMm }: Tape,
  structure: readonly StructurePiece[],
): Aircraft['referencePoints'] {
  const wing = structure.find((piece) => piece.kind === 'surface' && piece.role === 'wing');
  const z = wing?.kind === 'surface' ? wing.rootMm[2] : 0;
  const upper = structure.find((piece) => piece.id === 'upper-wing');
  return [
    { id: 'nose', name: 'Nose of the body', positionMm: [0, 0, 0] },
    { id: 'wing-root-le', name: 'Wing root leading edge', positionMm: [wingAtMm, 0, z] },
    ...(upper?.kind === 'surface'
      ? [{ id: 'upper-wing-root-le', name: 'Upper wing root leading edge', positionMm: upper.rootMm }]
      : []),
    { id: 'wing-root-te', name: 'Wing root trailing edge', positionMm: [wingAtMm + rootChordMm, 0, z] },
    {
      id: 'tail-end',
      name: arrangementOf(id).tail === 'none' ? 'End of the body' : 'End of the tail',
      positionMm: [lengthMm, 0, 0],
    },
  ];
}

/** Flow and profile to begin with: common practice, no source. */
function petrol({ tank }: Things): Fuel {
  const wholeMl = (tank?.fuelG ?? 0) / PETROL_G_PER_ML;
  return {
    kind: 'petrol',
    name: 'Petrol',
    densityGPerMl: PETROL_G_PER_ML,
    use: 'burn',
    share: 'volume',
    flow: { idleMlPerMin: Math.ceil(wholeMl / 100), fullMlPerMin: Math.ceil(wholeMl / 16) },
    profile: { name: 'Circuits', phases: [{ name: 'Circuits', durationS: 720, throttlePct: 45 }] },
    reservePct: 20,
  };
}

/** The pack where the whole travel lies best in the forward part of the band, as far as its bay goes; whole mm. */
function packPlaced(aircraft: Aircraft): Aircraft {
  const pack = aircraft.parts.find(({ id }) => id === PACK_ID);
  const bay = aircraft.bays?.find(({ id }) => id === BAY_ID);
  if (pack?.shape.kind !== 'box' || !bay) return aircraft;
  const answer = estimateStability(stabilityInput(aircraft), 'coarse');
  const estimate = answer && 'neutralPointMm' in answer ? answer : null;
  const balance = balanceAt(aircraft, { fuelFraction: 1, down: LEVEL, estimate });
  const movable = { stationMm: pack.positionMm[0], massesG: balance.travel.map(() => pack.massG) };
  const { band } = balance;
  if (!band) return aircraft;
  const aftMm = band.forwardMm + 2 * FIRST_IN_BAND * (band.aftMm - band.forwardMm);
  const wantedMm = bestStation(balance.travel, movable, { forwardMm: band.forwardMm, aftMm });
  if (wantedMm === null) return aircraft;
  const room = (bay.lengthMm - pack.shape.lengthMm) / 2;
  const [leastMm, mostMm] = [Math.ceil(bay.positionMm[0] - room), Math.floor(bay.positionMm[0] + room)];
  const stationMm = Math.min(Math.max(Math.round(wantedMm), leastMm), Math.max(leastMm, mostMm));
  return placeItem(aircraft, PACK_ID, [stationMm, pack.positionMm[1], pack.positionMm[2]]);
}
