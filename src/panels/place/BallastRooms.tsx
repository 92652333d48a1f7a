import '../fit/fit.css';
import { useEffect } from 'react';
import { useBench } from '../../store/react';
import { FreeZones } from './FreeZones';
import { Spots } from './Spots';

/** Where ballast may go and where not. While it is open the stage shows both. */
export function BallastRooms() {
  const { place } = useBench();
  useEffect(() => {
    place.api.setState({ ballastShown: true });
    return () => place.api.setState({ ballastShown: false });
  }, [place]);
  return (
    <>
      <Spots />
      <FreeZones />
    </>
  );
}
