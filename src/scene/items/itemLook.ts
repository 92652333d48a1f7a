import { Color } from 'three';
import type { Palette } from '../materials/palette';

export interface ItemLook {
  readonly fill: string;
  readonly edge: string;
  readonly edgePx: number;
}

/** Fill and edges of an item carried: selected it is outlined in ink, locked it is paler. */
export function itemLook(palette: Palette, color: string, selected: boolean, locked: boolean): ItemLook {
  const fill = new Color(color);
  if (locked) fill.lerp(new Color(palette.dark ? '#5a6468' : '#c3c9c8'), 0.45);
  const edge = selected
    ? new Color(palette.dark ? '#ffffff' : '#0c141b')
    : fill.clone().lerp(new Color('#0a1014'), 0.62);
  return { fill: `#${fill.getHexString()}`, edge: `#${edge.getHexString()}`, edgePx: selected ? 2.4 : 1 };
}
