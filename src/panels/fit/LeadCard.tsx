import './fit.css';
import { useCommitted } from '../../store/react';
import { LeadFields } from './LeadFields';

/** The figures of a lead that is selected in the manifest. */
export function LeadCard({ id }: { readonly id: string }) {
  const at = useCommitted(({ leads }) => (leads ?? []).findIndex((lead) => lead.id === id));
  return (
    <section className="fit">
      <LeadFields at={at} named={false} />
    </section>
  );
}
