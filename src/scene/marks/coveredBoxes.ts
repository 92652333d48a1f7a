import type { LabelBox } from '../../interaction/labelLayout';

/** The boxes of what lies over the picture: switches and bars, read only when one of them changes. */
export interface CoveredBoxes {
  now(): readonly LabelBox[];
  stop(): void;
}

export function watchCovered(box: HTMLElement, changed: () => void): CoveredBoxes {
  const section = box.closest('section') ?? box;
  let boxes: readonly LabelBox[] = [];
  const read = () => {
    const { left, top } = box.getBoundingClientRect();
    const over = [...section.querySelectorAll(':scope > :not(.stage-picture), .stage-bar')];
    boxes = over.map((element) => {
      const at = element.getBoundingClientRect();
      return { left: at.left - left, top: at.top - top, width: at.width, height: at.height };
    });
    changed();
  };
  const sizes = new ResizeObserver(read);
  const watch = () => {
    sizes.disconnect();
    sizes.observe(section);
    for (const element of section.querySelectorAll(':scope > :not(.stage-picture), .stage-bar'))
      sizes.observe(element);
    read();
  };
  const comings = new MutationObserver(watch);
  comings.observe(section, { childList: true });
  comings.observe(box, { childList: true });
  watch();
  return {
    now: () => boxes,
    stop: () => {
      sizes.disconnect();
      comings.disconnect();
    },
  };
}
