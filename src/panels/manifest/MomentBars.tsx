import { useRef } from 'react';
import { weightsAlong } from '../beam/weights';
import { useDrawn } from '../useDrawn';
import { momentAbout } from './order';

/**
 * Draws each row's share of the moment about the CG along its foot: to the left what pulls the nose down,
 * to the right what pulls the tail down. The longest bar is half the row.
 */
export function MomentBars() {
  const here = useRef<HTMLSpanElement>(null);
  useDrawn(({ balance }) => {
    const answer = balance.get();
    const cgMm = answer.cgMm?.[0] ?? null;
    const moments = new Map(
      weightsAlong(answer, 0).map(({ sourceId, massG, atMm }) => [sourceId, momentAbout(massG, atMm, cgMm)]),
    );
    const most = Math.max(1e-9, ...[...moments.values()].map(Math.abs));
    const bars = here.current?.parentElement?.querySelectorAll<HTMLElement>('[data-moment]') ?? [];
    for (const bar of bars) {
      const share = (moments.get(bar.dataset.moment ?? '') ?? 0) / most;
      bar.style.left = `${50 + Math.min(0, share) * 50}%`;
      bar.style.width = `${Math.abs(share) * 50}%`;
    }
  });
  return <span ref={here} hidden />;
}
