import type { Aircraft } from '../../model/document/types';
import { EntryList, withoutAt } from './EntryList';
import { LeadFields } from './LeadFields';
import { withLead } from './roomEdits';

/** The leads aboard. */
export function LeadEntries() {
  return (
    <EntryList
      title="Leads"
      noun="lead"
      count={({ leads }) => leads?.length ?? 0}
      headOf={({ leads }: Aircraft, at) => leads?.[at]?.name ?? ''}
      add={withLead}
      remove={(aircraft, at) => ({ ...aircraft, leads: withoutAt(aircraft.leads, at) })}
    >
      {(at) => <LeadFields at={at} />}
    </EntryList>
  );
}
