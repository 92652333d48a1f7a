import type * as v from 'valibot';
import type { aircraft, part, roles, tank } from './schema/aircraft';
import type { massSources, sizeSources } from './schema/sources';
import type { block, boom, fuselage, leg, massSource, structurePiece, surface } from './schema/structure';

type Frozen<T> = T extends object ? { readonly [K in keyof T]: Frozen<T[K]> } : T;

/** The whole document. Immutable: every edit makes a new one that shares what did not change. */
export type Aircraft = Frozen<v.InferOutput<typeof aircraft>>;
export type Part = Frozen<v.InferOutput<typeof part>>;
export type TankItem = Frozen<v.InferOutput<typeof tank>>;
export type StructurePiece = Frozen<v.InferOutput<typeof structurePiece>>;
export type Fuselage = Frozen<v.InferOutput<typeof fuselage>>;
export type Surface = Frozen<v.InferOutput<typeof surface>>;
export type Boom = Frozen<v.InferOutput<typeof boom>>;
export type Leg = Frozen<v.InferOutput<typeof leg>>;
export type Block = Frozen<v.InferOutput<typeof block>>;
export type MassSource = Frozen<v.InferOutput<typeof massSource>>;
export type TargetBand = NonNullable<Aircraft['targetBand']>;
export type BareAirframe = NonNullable<Aircraft['bareAirframe']>;
export type Fuel = NonNullable<Aircraft['fuel']>;
export type Bay = NonNullable<Aircraft['bays']>[number];
export type Hatch = NonNullable<Aircraft['hatches']>[number];
export type KeepApartRule = NonNullable<Aircraft['keepApart']>[number];
export type Lead = NonNullable<Aircraft['leads']>[number];
export type BallastFreeZone = NonNullable<Aircraft['ballastFree']>[number];
export type BallastSpotItem = NonNullable<Aircraft['ballastSpots']>[number];
export type LoadFactors = NonNullable<Aircraft['loadFactors']>;
export type SwitchItem = NonNullable<Aircraft['switches']>[number];
export type ReferencePoint = Aircraft['referencePoints'][number];
export type Role = (typeof roles)[number];
export type MassFrom = (typeof massSources)[number];
export type SizeFrom = (typeof sizeSources)[number];
export type AircraftKind = Aircraft['kind'];
export type WeighIn = NonNullable<Aircraft['weighIns']>[number];
export type WeighLine = Extract<WeighIn['reading'], { readonly by: 'lines' }>['lines'][number];
export type ScaleReading = Extract<WeighIn['reading'], { readonly by: 'scales' }>['scales'][number];
