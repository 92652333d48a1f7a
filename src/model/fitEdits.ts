import type { Aircraft } from './types';

/** What the document keeps for fit, without what was for a thing that is gone: only the lists that change. */
export function fitWithout(
  { leads, keepApart }: Aircraft,
  id: string,
): Partial<Pick<Aircraft, 'leads' | 'keepApart'>> {
  const isOfLead = ({ from, to }: { readonly from: string; readonly to: string }) => from === id || to === id;
  const isOfRule = (rule: { readonly between: string; readonly and: string }) =>
    rule.between === id || rule.and === id;
  return {
    ...(leads?.some(isOfLead) && { leads: leads.filter((lead) => !isOfLead(lead)) }),
    ...(keepApart?.some(isOfRule) && { keepApart: keepApart.filter((rule) => !isOfRule(rule)) }),
  };
}

/** Takes a bay away; parts bound to it are bound to none. */
export const removeBay = (aircraft: Aircraft, id: string): Aircraft => ({
  ...aircraft,
  bays: (aircraft.bays ?? []).filter((bay) => bay.id !== id),
  parts: aircraft.parts.map((part) => {
    if (part.bayId !== id) return part;
    const { bayId: _, ...free } = part;
    return free;
  }),
});
