import { perObjects } from '../../engine/memory/memory';
import { type LeadState, leadState } from '../../model/airframe/leads';
import type { Aircraft } from '../../model/document/types';
import { useAircraft } from '../../store/react';
import { Icon } from '../icons';
import { type Readings, useReadings } from '../readings';

const leadsAt = perObjects((aircraft: Aircraft, id: string): readonly LeadState[] =>
  (aircraft.leads ?? []).flatMap((lead) =>
    lead.from === id || lead.to === id ? (leadState(aircraft, lead) ?? []) : [],
  ),
);

/** How a lead reaches: "40 mm short", "12 mm to spare", or what it must be cut to. */
export function slackWords({ slackMm, ownedMm, neededMm }: LeadState, say: Readings): string {
  if (ownedMm === null) return `to be made ${say.length(neededMm)} long`;
  const slack = say.length(Math.abs(slackMm));
  return slackMm < 0 ? `${slack} short` : `${slack} to spare`;
}

/** The leads that end at the item: needed against owned. */
export function LeadsAt({ id }: { readonly id: string }) {
  const say = useReadings();
  const leads = useAircraft((aircraft) => leadsAt(aircraft, id));
  if (leads.length === 0) return null;
  return (
    <>
      <h4>Leads</h4>
      <ul className="fit-leads">
        {leads.map((lead) => (
          <li key={lead.id} data-short={lead.slackMm < 0 || undefined}>
            {lead.slackMm < 0 && <Icon name="warn" />}
            <span>
              <strong>{lead.name}</strong> is {slackWords(lead, say)}
              {lead.ownedMm !== null &&
                `: ${say.length(lead.neededMm)} needed, ${say.length(lead.ownedMm)} owned`}
              .
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}
