import { removeBay } from '../../model/document/fitEdits';
import type { Aircraft, Bay } from '../../model/document/types';
import { useBench, useCommitted } from '../../store/react';
import { PlaceFields } from '../card/PlaceFields';
import { EditButton } from '../fields/EditButton';
import { SizeFields } from '../fields/SizeFields';
import { TextEntry } from '../fields/TextEntry';
import { changedAt, EntryList } from './EntryList';
import { withBay, withProposedBays } from './roomEdits';

const change =
  (at: number, fields: Partial<Bay>) =>
  (aircraft: Aircraft): Aircraft => ({
    ...aircraft,
    bays: changedAt(aircraft.bays, at, fields),
  });

/** Rooms where parts may be mounted, by hand or proposed from the hull. */
export function BayEntries() {
  const bench = useBench();
  const nameAt = ({ bays }: Aircraft, at: number) => bays?.[at]?.name ?? '';
  return (
    <EntryList
      title="Bays"
      noun="bay"
      count={({ bays }) => bays?.length ?? 0}
      headOf={nameAt}
      add={(aircraft) => withBay(aircraft, Math.round(bench.balance.get().cgMm?.[0] ?? 0))}
      remove={(aircraft, at) => removeBay(aircraft, aircraft.bays?.[at]?.id ?? '')}
      more={
        <EditButton step="Propose bays" edit={withProposedBays}>
          Propose bays between the formers
        </EditButton>
      }
    >
      {(at) => <BayFields at={at} />}
    </EntryList>
  );
}

function BayFields({ at }: { readonly at: number }) {
  const name = useCommitted(({ bays }) => bays?.[at]?.name ?? '');
  return (
    <>
      <TextEntry
        label="Name"
        step={`Rename ${name}`}
        read={({ bays }) => bays?.[at]?.name}
        write={(aircraft, text) => change(at, { name: text })(aircraft)}
      />
      <SizeFields
        name={name}
        read={({ bays }) => bays?.[at]}
        write={(aircraft, size) => change(at, size)(aircraft)}
      />
      <PlaceFields
        name={name}
        read={({ bays }) => bays?.[at]}
        write={(aircraft, place) => change(at, place)(aircraft)}
      />
    </>
  );
}
