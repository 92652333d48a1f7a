import { perObjects } from '../../engine/memory/memory';
import { type LeadState, leadState } from '../../model/airframe/leads';
import type { Aircraft } from '../../model/document/types';
import { Icon } from '../icons';
import { Live, useBenchList } from '../Live';
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

/** What is said of a lead after its name. */
function restOf(lead: LeadState, say: Readings): string {
  const lengths = `: ${say.length(lead.neededMm)} needed, ${say.length(lead.ownedMm ?? 0)} owned`;
  return ` is ${slackWords(lead, say)}${lead.ownedMm === null ? '' : lengths}.`;
}

/** The leads that end at the item: needed against owned, as it happens. */
export function LeadsAt({ id }: { readonly id: string }) {
  const say = useReadings();
  const leads = useBenchList(({ document }) =>
    leadsAt(document.current(), id).map(({ id: leadId, name, slackMm }) => ({
      leadId,
      name,
      isShort: slackMm < 0,
    })),
  );
  if (leads.length === 0) return null;
  return (
    <>
      <h4>Leads</h4>
      <ul className="fit-leads">
        {leads.map(({ leadId, name, isShort }) => (
          <li key={leadId} data-short={isShort || undefined}>
            {isShort && <Icon name="warn" />}
            <span>
              <strong>{name}</strong>
              <Live
                read={({ document }) => {
                  const lead = leadsAt(document.current(), id).find((each) => each.id === leadId);
                  return lead ? restOf(lead, say) : '';
                }}
              />
            </span>
          </li>
        ))}
      </ul>
    </>
  );
}
