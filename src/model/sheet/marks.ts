import type { Vec3 } from '../../engine/geometry/types';
import { type Positions, switchesOf } from '../airframe/loadSwitches';
import type { Balance } from '../balance/balance';
import { LINE_95 } from '../balance/certainty';
import { midSentence } from '../document/inWords';
import type { Aircraft } from '../document/types';
import type { Judgement } from '../judgement/types';
import { formatLength } from '../units';
import { lengthUp, type Say } from '../words/say';
import { stateWords } from './balancing';

/** A station that the drawings show, with its word and figure. */
export interface StationMark {
  readonly kind: 'cg-full' | 'cg-dry' | 'forward' | 'aft' | 'neutral-point' | 'axle' | 'reference' | 'end';
  readonly stationMm: number;
  readonly label: string;
  /** As read from the reference point. */
  readonly figure: string;
}

/** What the drawings are marked with besides the parts. */
export interface Marks {
  readonly stations: readonly StationMark[];
  readonly cgFullMm: Vec3 | null;
  readonly cgDryMm: Vec3 | null;
  readonly band: { readonly forwardMm: number; readonly aftMm: number } | null;
  /** The load state and the attitude that the CG is marked for; empty where there is but one, level. */
  readonly cgState: string;
}

/** CG, band, neutral point, axles and reference points, in the units and from the reference point chosen. */
export function marksOf(
  aircraft: Aircraft,
  balance: Balance,
  judgement: Judgement,
  say: Say,
  held: string | null,
): Marks {
  const { shown, band, margin } = judgement;
  const mark = (kind: StationMark['kind'], label: string, stationMm: number, more = ''): StationMark => ({
    kind,
    stationMm,
    label,
    figure: `${formatLength(stationMm - say.fromMm, say.units, { fine: true, unit: false })}${more}`,
  });
  const { estimate, estimateFresh } = balance;
  const isEstimated = margin.status === 'estimated' && estimate && estimateFresh;
  const plusMinus = isEstimated ? ` ± ${lengthUp(LINE_95 * estimate.neutralPointSigmaMm, say)}` : '';
  const estimated = band?.from === 'estimate' ? ', est.' : '';
  const stations = [
    ...(shown ? [mark('cg-full', shown.burns ? 'CG full' : 'CG', shown.full.cgMm[0])] : []),
    ...(shown?.burns ? [mark('cg-dry', 'CG dry', shown.dry.cgMm[0])] : []),
    ...(band
      ? [
          mark('forward', `Forward limit${estimated}`, band.forwardMm),
          mark('aft', `Aft limit${estimated}`, band.aftMm),
        ]
      : []),
    ...(isEstimated
      ? [mark('neutral-point', 'Neutral point, est.', estimate.neutralPointMm, plusMinus)]
      : []),
    ...aircraft.structure.flatMap((piece) =>
      piece.kind === 'leg' ? [mark('axle', `${piece.name}, axle`, piece.axleMm[0])] : [],
    ),
    ...aircraft.referencePoints
      .filter(({ positionMm }) => positionMm[0] !== say.fromMm)
      .map(({ name, positionMm }) => mark('reference', name, positionMm[0])),
  ];
  return {
    stations: stations.filter(({ stationMm }) => Number.isFinite(stationMm)),
    cgState: shown ? cgStateOf(aircraft, shown.positions, held) : '',
    cgFullMm: finite(shown?.full.cgMm),
    cgDryMm: shown?.burns ? finite(shown.dry.cgMm) : null,
    band: band && Number.isFinite(band.forwardMm) && Number.isFinite(band.aftMm) ? band : null,
  };
}

function cgStateOf(aircraft: Aircraft, positions: Positions, held: string | null): string {
  const state = switchesOf(aircraft).length > 0 ? midSentence(stateWords(aircraft, positions, '')) : '';
  return [held && midSentence(held), state].filter(Boolean).join(', ');
}

const finite = (at: Vec3 | undefined): Vec3 | null => (at?.every(Number.isFinite) ? at : null);
