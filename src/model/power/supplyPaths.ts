import type { Vec3 } from '../../engine/geometry/types';
import { leadState } from '../airframe/leads';
import type { Aircraft } from '../document/types';
import { wiringOf } from './wiring';

/** The ways of current from a part on, each as it runs: by its lead, else straight. Aircraft frame, mm; empty for what feeds nothing. */
export function supplyPaths(aircraft: Aircraft, fromId: string): readonly (readonly Vec3[])[] {
  const feeds = wiringOf(aircraft)?.feeds ?? [];
  const paths: (readonly Vec3[])[] = [];
  const seen = new Set<string>();
  const open = [fromId];
  while (open.length > 0) {
    const id = open.pop() as string;
    if (seen.has(id)) continue;
    seen.add(id);
    for (const { from, to, leadId } of feeds) {
      if (from.id !== id) continue;
      const lead = aircraft.leads?.find((other) => other.id === leadId);
      const path = lead && leadState(aircraft, lead)?.pathMm;
      paths.push(path ?? [from.positionMm, to.positionMm]);
      open.push(to.id);
    }
  }
  return paths;
}
