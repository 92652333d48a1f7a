import type { Corner } from '../../engine/geometry/polygon';
import type { Outline } from '../../model/weigh/outlines';

interface OutlinesProps {
  readonly outlines: readonly Outline[];
  /** From mm to the drawing's own units. */
  readonly at: (corner: Corner) => Corner;
}

/** The solids of an airframe as a drawing has them, each marked with its kind. */
export function Outlines({ outlines, at }: OutlinesProps) {
  return outlines.map(({ id, kind, corners }) => (
    <polygon
      key={id}
      data-kind={kind}
      points={corners
        .map((corner) =>
          at(corner)
            .map((part) => part.toFixed(1))
            .join(),
        )
        .join(' ')}
    />
  ));
}
