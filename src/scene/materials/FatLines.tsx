import { type Ref, useImperativeHandle, useMemo } from 'react';
import { Color, DoubleSide, type InstancedInterleavedBuffer, type InterleavedBufferAttribute } from 'three';
import { LineMaterial } from 'three/examples/jsm/lines/LineMaterial.js';
import { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { LineSegmentsGeometry } from 'three/examples/jsm/lines/LineSegmentsGeometry.js';
import { cutPlanes } from './useCut';
import { useDisposed } from './useDisposed';

export interface FatLinesProps {
  readonly ref?: Ref<LineSegments2>;
  /** Pairs of points, mm: [x y z x y z, ...]. Lines that move start with as many as they will ever have. */
  readonly pairs: Float32Array;
  readonly color: string;
  /** CSS pixels. */
  readonly widthPx: number;
  readonly opacity?: number;
  readonly depthTest?: boolean;
  readonly renderOrder?: number;
  readonly visible?: boolean;
  /** Lines moved by hand are never culled. */
  readonly moving?: boolean;
  /** Taken off with the left half of the airframe when that is cut. */
  readonly cut?: boolean;
  /** Dash and gap, mm. */
  readonly dashMm?: number;
}

/** Lines of a width that the screen keeps, whatever the distance. */
export function FatLines(props: FatLinesProps) {
  const { pairs, color, widthPx, opacity = 1, depthTest = true, renderOrder = 0, visible = true } = props;
  const { moving = false, cut = false, dashMm } = props;
  const geometry = useDisposed(() => new LineSegmentsGeometry().setPositions(pairs), [pairs]);
  const material = useDisposed(
    () => new LineMaterial({ depthWrite: false, transparent: true, side: DoubleSide }),
    [],
  );
  material.color = new Color(color);
  material.linewidth = widthPx;
  material.opacity = opacity;
  material.depthTest = depthTest;
  material.clippingPlanes = cut ? cutPlanes : null;
  material.dashed = dashMm !== undefined;
  if (dashMm) {
    material.dashSize = dashMm;
    material.gapSize = dashMm * 0.8;
  }
  const lines = useMemo(() => new LineSegments2(geometry, material), [geometry, material]);
  useMemo(() => dashMm && lines.computeLineDistances(), [dashMm, lines]);
  useImperativeHandle(props.ref, () => lines, [lines]);
  return (
    <primitive
      object={lines}
      renderOrder={renderOrder}
      visible={visible}
      frustumCulled={!moving}
      dispose={null}
    />
  );
}

/** Moves lines in place, without a new buffer; lines beyond those given shrink to nothing. */
export function moveLines(lines: LineSegments2, pairs: ArrayLike<number>): void {
  const start = lines.geometry.getAttribute('instanceStart') as InterleavedBufferAttribute;
  const buffer = start.data as InstancedInterleavedBuffer;
  const figures = buffer.array;
  for (let i = 0; i < figures.length; i += 1) figures[i] = pairs[i] ?? 0;
  buffer.needsUpdate = true;
}
