import './spread.css';
import { useRef } from 'react';
import { useRest } from '../../store/react';
import { setAttribute } from '../drawing';
import { useDrawn } from '../useDrawn';
import type { Line } from './lines';

interface SpreadProps {
  readonly line: Line;
  /** A coordinate along the axis in the drawing, px. */
  readonly x: (mm: number) => number;
  /** A share of fuel left in the drawing, px. */
  readonly y: (fraction: number) => number;
}

/** How well the travel is known, as a blur around it, and how far the attitude takes the CG, as a whisker. */
export function Spread({ line, x, y }: SpreadProps) {
  const blur = useRef<SVGPathElement>(null);
  const whisker = useRef<SVGPathElement>(null);
  const certainty = useRest((rest) => rest.certainty);
  const wander = useRest((rest) => rest.wander);
  useDrawn(({ balance, view }) => {
    const { travel } = balance.get();
    const plusMinus = line.axis === 0 ? (certainty?.travelPlusMinusMm ?? []) : [];
    const edge = (way: 1 | -1) =>
      travel.map(
        (point, at) => `${x(point.cgMm[line.axis] + way * (plusMinus[at] ?? 0))} ${y(point.fuelFraction)}`,
      );
    const isSpread = travel.length > 0 && plusMinus.length === travel.length;
    setAttribute(blur.current, 'd', isSpread ? `M${[...edge(-1), ...edge(1).reverse()].join('L')}Z` : '');
    const ends = line.axis === 0 ? wander?.station : wander?.buttline;
    const level = y(view.getState().fuelFraction);
    setAttribute(
      whisker.current,
      'd',
      ends
        ? [ends.least.mm, ends.most.mm].map((mm) => `M${x(mm)} ${level - 5}v10`).join('') +
            `M${x(ends.least.mm)} ${level}H${x(ends.most.mm)}`
        : '',
    );
  });
  return (
    <>
      <path ref={blur} className="spread-blur" />
      <path ref={whisker} className="spread-whisker" />
    </>
  );
}
