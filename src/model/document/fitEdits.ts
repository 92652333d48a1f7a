import type { Aircraft, KeepApartRule, Lead } from './types';

/**
 * What the document keeps for fit, without what was for a thing that is gone, or without the lead that is gone
 * itself: only the lists that change.
 */
export function fitWithout(
  { leads, keepApart }: Aircraft,
  gone: string,
): Partial<Pick<Aircraft, 'leads' | 'keepApart'>> {
  const isOfLead = ({ id, from, to }: Lead) => [id, from, to].includes(gone);
  const isOfRule = ({ between, and }: KeepApartRule) => between === gone || and === gone;
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

/** Gives a lead another name. */
export const renameLead = (aircraft: Aircraft, id: string, name: string): Aircraft => ({
  ...aircraft,
  leads: (aircraft.leads ?? []).map((lead) => (lead.id === id ? { ...lead, name } : lead)),
});
