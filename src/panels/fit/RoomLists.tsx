import './fit.css';
import { useEffect } from 'react';
import { useBench } from '../../store/react';
import { BayEntries } from './BayEntries';
import { HatchEntries } from './HatchEntries';
import { KeepApartEntries } from './KeepApartEntries';
import { LeadEntries } from './LeadEntries';
import { LoadFactorFields } from './LoadFactorFields';
import { OrderButton } from './OrderButton';

/** Every list that fit goes by. While it is open the stage shows bays and hatches. */
export default function RoomLists() {
  const { fit } = useBench();
  useEffect(() => {
    fit.api.setState({ roomsShown: true });
    return () => fit.api.setState({ roomsShown: false });
  }, [fit]);
  return (
    <>
      <BayEntries />
      <HatchEntries />
      <OrderButton />
      <KeepApartEntries />
      <LeadEntries />
      <LoadFactorFields />
    </>
  );
}
