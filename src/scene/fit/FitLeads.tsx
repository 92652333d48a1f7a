import { useMemo, useRef } from 'react';
import type { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { useLive } from '../../store/react';
import { FatLines, moveLines } from '../materials/FatLines';
import { dashedPairs, throughPairs } from './fitLines';
import { seenLeads } from './fitReadings';

/** So many stretches can be drawn, dashes among them. */
const MOST = 600 * 6;
const DASH_MM = 9;
const REACHES = '#bfe3ff';
/** Reads on the mat in either theme. */
const SHORT = '#ff8a7d';

/** Leads as thin lines from part to part; one that is too short is thicker, in another colour and dashed. */
export function FitLeads() {
  const reaching = useRef<LineSegments2>(null);
  const short = useRef<LineSegments2>(null);
  const spare = useMemo(() => [new Float32Array(MOST), new Float32Array(MOST)] as const, []);
  useLive((bench) => {
    const leads = seenLeads(bench);
    const put = (lines: LineSegments2 | null, pairs: readonly number[]) => {
      if (!lines) return;
      lines.visible = pairs.length > 0;
      if (pairs.length > 0) moveLines(lines, pairs.slice(0, MOST));
    };
    put(
      reaching.current,
      leads.flatMap(({ slackMm, pathMm }) => (slackMm < 0 ? [] : throughPairs(pathMm))),
    );
    put(
      short.current,
      leads.flatMap(({ slackMm, pathMm }) => (slackMm < 0 ? dashedPairs(pathMm, DASH_MM) : [])),
    );
  });
  const drawn = { moving: true, depthTest: false, renderOrder: 26 } as const;
  return (
    <>
      <FatLines ref={reaching} pairs={spare[0]} color={REACHES} widthPx={1.3} opacity={0.75} {...drawn} />
      <FatLines ref={short} pairs={spare[1]} color={SHORT} widthPx={2.4} {...drawn} />
    </>
  );
}
