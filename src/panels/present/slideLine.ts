import { switchesOf } from '../../model/airframe/loadSwitches';
import type { Aircraft, Slide } from '../../model/document/types';
import { variantsOf } from '../../model/document/variants';
import { attitudeName } from '../../model/loads/attitude';
import { formatNumber } from '../../model/units';

const viewNames = { free: 'Free view', side: 'Side', top: 'Top', front: 'Front' } as const;
const lookNames = { cut: 'cut open', xray: 'x-ray', exploded: 'lifted out', quiet: 'quiet' } as const;

const percent = (fraction: number) => `${formatNumber(100 * fraction, 0)} %`;

/** What a slide shows, in a line: "Side, 100 % fuel, 30° climb, cut open; burns to 0 % in 8 s". */
export function slideLine(aircraft: Aircraft, slide: Slide): string {
  const { burn, against } = slide;
  const variant = variantsOf(aircraft).find(({ id }) => id === slide.variantId);
  const switched = (slide.positions ?? []).map(({ of, in: position }) => {
    const found = switchesOf(aircraft).find(({ id }) => id === of);
    return `${found?.name ?? of} ${found?.positions.find(({ id }) => id === position)?.name ?? position}`;
  });
  const first = [
    viewNames[slide.view],
    variant?.name,
    aircraft.tanks.length > 0 ? `${percent(slide.fuel)} fuel` : '',
    slide.attitude && attitudeName(slide.attitude),
    ...switched,
    ...(slide.looking ?? []).map((way) => lookNames[way]),
  ];
  return [
    first.filter(Boolean).join(', '),
    burn && `burns to ${percent(burn.to)} in ${formatNumber(burn.seconds, 0)} s`,
    against && `${against.as === 'ghost' ? 'over' : 'beside'} “${against.name}”`,
  ]
    .filter(Boolean)
    .join('; ');
}
