import { shownText } from '../../model/document/names';
import { keepApartFaultsOf } from '../../model/fit/keepApart';
import { useAircraft } from '../../store/react';
import { Icon } from '../icons';
import { useReadings } from '../readings';

/** What stands too near to the item, and why that is bad. */
export function KeepApart({ id }: { readonly id: string }) {
  const say = useReadings();
  const faults = useAircraft((aircraft) => keepApartFaultsOf(aircraft, id));
  return faults.map((fault) => (
    <p key={`${fault.itemId} ${fault.why}`} className="fit-note">
      <Icon name="warn" />
      <span>
        {say.length(fault.distanceMm)} from {shownText(fault.name)}; at least {say.length(fault.atLeastMm)}{' '}
        wanted: {fault.why}.{fault.commonPractice && <em> Common practice.</em>}
      </span>
    </p>
  ));
}
