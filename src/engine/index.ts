/**
 * The whole engine: functions on plain data, without the app. Frame: x station aft, y buttline right,
 * z waterline up, from the datum; mm, g, ml, s and degrees; inertia in g·mm² with products as tensor
 * elements (xy = −∫xy dm). Each function's own docstring gives the rest.
 *
 * A first roll-up:
 *   const pack = massPlace(solidOfMass({ kind: 'box', lengthMm: 120, widthMm: 45, heightMm: 30 }, 420), pose);
 *   const whole = massSum([airframe, pack, liquidState(tank, 300, [0, 0, -1]).mass]);
 *   whole.cgMm; principalMoments(whole.inertiaAboutCgGmm2);
 */

// CG travel, band, ballast, load states, uncertainty
export { ballastRange, ballastToLimit, tipBallast, tipMassForLateral } from './balance/ballast';
export { allowedStations, type Band, type BandFit, bandFit, bestStation, type Movable } from './balance/band';
export { bodyMeasurements, probabilityInBand, ranking } from './balance/bandProbability';
export { equivalentBox, inertiaForPeople } from './balance/inertiaForPeople';
export { type LoadEnvelope, loadEnvelope } from './balance/loadStates';
export { cgShiftForFuel, cgShiftForMass, cgShiftForMove, sensitivities } from './balance/sensitivity';
export { cgTravel, type LiquidMoment, type TravelPoint, travelExtremes } from './balance/travel';
export { type MeasuredBody, propagate, standardUncertainty, type Uncertainty } from './balance/uncertainty';
// Places and turns
export {
  directionFromAircraft,
  directionToAircraft,
  pointFromAircraft,
  pointToAircraft,
  poseAtDatum,
  poseRotation,
} from './geometry/rotation';
export type { Mat3, Pose, Vec3 } from './geometry/types';
// Liquid at any attitude, the order in which tanks drain, and the burn
export { type Attitude, downFromAttitude } from './liquid/attitude';
export {
  type BurnTimeline,
  burnTimeline,
  drawnAt,
  endurance,
  flowAt,
  timeAtDrawn,
  timeToReserve,
} from './liquid/burn';
export { feedBreaks } from './liquid/feedBreaks';
export { densityAtTemperature } from './liquid/fuelDensity';
export { liquidInShape, type ShapeLiquid } from './liquid/liquidInShape';
export { liquidState, tankVolumeMl } from './liquid/liquidState';
export { fuelStates, type Plumbing, plumbing, tankVolumesAfter } from './liquid/plumbing';
export type { Flow, FlowPoint, LiquidState, Phase, Tank } from './liquid/types';
export { tankShapeFault } from './liquid/vesselOf';
export { surfaceOutline, wettedMesh } from './liquid/wettedMesh';
// Solids, skins, meshes, and the algebra of mass properties
export {
  inertiaAbout,
  massAdd,
  massMirror,
  massMove,
  massPlace,
  massPoint,
  massRemove,
  massScale,
  massSum,
  massTurn,
  noMass,
} from './mass/massProperties';
export { meshProperties, meshSurface } from './mass/mesh';
export { meshFault } from './mass/meshFault';
export { mirroredShape } from './mass/mirroredShape';
export { featureLines } from './mass/outline';
export { massFault, principalMoments, radiiOfGyration, triangleInequalityFault } from './mass/principal';
export { shapeBounds } from './mass/shapeBounds';
export { shapeFault } from './mass/shapeFault';
export type * from './mass/shapes';
export { shellMass, shellOfMass, surfaceProperties } from './mass/surfaceProperties';
export { tensorRotate } from './mass/tensor';
export { tessellate } from './mass/tessellate';
export type { MassProperties, Mesh, SurfaceProperties, Tensor, VolumeProperties } from './mass/types';
export { solidMass, solidOfMass, volumeProperties } from './mass/volumeProperties';
// A closed mesh out of loose triangles, and what lies inside it
export { meshHolds } from './mesh/meshHolds';
export { type MeshFindings, type MeshVerdict, soundMesh } from './mesh/soundMesh';
// Where things should sit: the least ballast with its proof, its choices, why not, zones; the solver is handed in
export {
  type AllowedZone,
  allowedZone,
  type ZoneInput,
  type ZoneMargin,
  zoneMargin,
} from './place/allowedZone';
export { type ArrangeOrder, arrange } from './place/arrange';
export { ballastBox, mostSteps } from './place/ballastRoom';
export { type Checked, checkPlaced } from './place/check';
export { fuelRange } from './place/fuelRange';
export { leadMoment, leadRunMm } from './place/leadRun';
export { massRange, spotEffects } from './place/massRange';
export type { Milp, MilpAnswer, MilpOrder, SolveMilp } from './place/milp';
export { arrangeOneOf, type OneOfSeveral } from './place/oneOfSeveral';
export { arrangeSurely, type RobustAnswer, sigmasFor } from './place/robust';
export type { ArrangeAnswer } from './place/searchState';
export { ballastForMargin, ballastForMoves, type TradeOffPoint } from './place/tradeOff';
export type * from './place/types';
export { type Lift, type Reason, type WhyNot, whyNot } from './place/whyNot';
// Weigh-in: scales, balance stand, tilt, swing, and the model held against them
export { type AirStrip, airSwungAlong } from './weigh/airSwungAlong';
export {
  type BalanceFound,
  balancePoint,
  type CgLine,
  crossingOfLines,
  type LinesCrossing,
} from './weigh/balancePoint';
export type { CulpritKind, Forgotten, Suspect } from './weigh/culpritHypotheses';
export { type Figure, type Refusal, resolutionSigma } from './weigh/figure';
export {
  heightFromTilt,
  type RecommendedTilt,
  recommendedTilt,
  type TiltedHeight,
  type TiltReading,
  type TiltSetup,
} from './weigh/heightFromTilt';
export { inertiaFromSwing, type Swing, type SwungInertia } from './weigh/inertiaFromSwing';
export { type Culprit, type CulpritRanking, rankCulprits } from './weigh/rankCulprits';
export { type Reconciled, reconcile } from './weigh/reconcile';
export { periodOfRuns, runOfTaps, type SwingRun } from './weigh/swingPeriod';
export { type UnaccountedFor, unaccountedFor } from './weigh/unaccountedFor';
export { type Scale, type ScalesSetup, type ScalesWeighing, weighOnScales } from './weigh/weighOnScales';
export type { WholeMeasurement, WholeQuantity } from './weigh/wholeResiduals';
// Planform, neutral point and static margin
export { bodyCarry, rootCarry } from './wing/bodyCarry';
export { fuselageMomentMm3PerRad } from './wing/fuselage';
export { grossPlanform } from './wing/grossPlanform';
export { bandFromMargins, COMMON_MARGINS, marginsOfBand, staticMarginPct } from './wing/margin';
export { type NeutralPoint, neutralPoint } from './wing/neutralPoint';
export { type Doubt, doubtSigmaMm, neutralPointDoubts } from './wing/neutralPointDoubt';
export { type Planform, pctMacToStation, planform, stationToPctMac } from './wing/planform';
export { type StripLoad, spanLoading } from './wing/spanLoading';
export { drelaNeutralPoint, nelsonNeutralPoint, textbookNeutralPoint } from './wing/textbook';
export type { LiftingSurface, WingPanel } from './wing/types';
