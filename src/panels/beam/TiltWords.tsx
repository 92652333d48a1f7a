import { tipMassForLateral } from '../../engine/balance/ballast';
import { aircraftExtent } from '../../model/airframe/extent';
import type { Aircraft } from '../../model/document/types';
import type { Bench } from '../../store/bench';
import { useView } from '../../store/react';
import { useBenchValue } from '../Live';
import { type Readings, useReadings } from '../readings';
import type { Line } from './lines';
import { rowsOf } from './rows';

/** How far the CG lies beyond the zone, mm; below 0 ahead of it or to the left, 0 inside. */
function beyond({ document, balance }: Bench, line: Line): number {
  const answer = balance.get();
  const zone = line.zone(document.current(), answer);
  const at = answer.cgMm?.[line.axis];
  if (!zone || at === undefined) return 0;
  return at < zone.forwardMm ? at - zone.forwardMm : Math.max(0, at - zone.aftMm);
}

const halfSpanMm = (aircraft: Aircraft): number => {
  const { minMm, maxMm } = aircraftExtent(aircraft);
  return Math.max(-minMm[1], maxMm[1]);
};

/** What would level the wings, in words; empty when nobody would notice. */
function levelling({ document, balance }: Bench, side: 'right' | 'left', say: Readings): string {
  const { massG, cgMm } = balance.get();
  const lateralMm = cgMm?.[1] ?? 0;
  if (Math.abs(lateralMm) < 0.05 || lateralMm > 0 !== (side === 'right')) return `${side} wing`;
  const tip = say.mass(tipMassForLateral(massG, lateralMm, halfSpanMm(document.current())));
  return `${side} wing heavy: ${tip} at the ${side === 'right' ? 'left' : 'right'} tip would level it`;
}

/** Says at the end that goes down what the tilt of the beam shows. */
export function TiltWords({ line, widthPx }: { readonly line: Line; readonly widthPx: number }) {
  const say = useReadings();
  const rows = useView(rowsOf);
  const lateral = line.axis === 1;
  const nose = useBenchValue((bench) => {
    if (lateral) return levelling(bench, 'right', say);
    const byMm = beyond(bench, line);
    return byMm < 0 ? `◂ nose-heavy now, by ${say.lengthFine(-byMm)}` : 'nose';
  });
  const tail = useBenchValue((bench) => {
    if (lateral) return levelling(bench, 'left', say);
    const byMm = beyond(bench, line);
    return byMm > 0 ? `tail-heavy now, by ${say.lengthFine(byMm)} ▸` : 'tail';
  });
  const out = useBenchValue((bench) => Math.sign(beyond(bench, line)));
  return (
    <>
      <text className="tilt-words" data-out={out !== 0 && nose.includes('heavy')} x="14" y={rows.labels}>
        {nose}
      </text>
      <text
        className="tilt-words"
        data-out={out !== 0 && tail.includes('heavy')}
        x={widthPx - 14}
        y={rows.labels}
        textAnchor="end"
      >
        {tail}
      </text>
    </>
  );
}
