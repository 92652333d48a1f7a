import { FitPlace } from '../fit/FitPlace';
import { Fold } from '../fold/Fold';
import { useReadings } from '../readings';
import { Room } from './Room';
import { fitSummary, momentSummary, roomSummary } from './summaries';
import { Working } from './Working';

/** What follows from where it is: where it could be, whether it fits, what it does to the balance. */
export function WhereItSits({ id }: { readonly id: string }) {
  const say = useReadings();
  return (
    <>
      <Fold id="room" title="Where may it sit?" summary={roomSummary(id, say)} openAtFirst>
        <Room id={id} />
      </Fold>
      <Fold id="fit" title="Fit" summary={fitSummary(id)} openAtFirst>
        <FitPlace id={id} />
      </Fold>
      <Fold id="working" title="Working" summary={momentSummary(id, say)}>
        <Working id={id} />
      </Fold>
    </>
  );
}
