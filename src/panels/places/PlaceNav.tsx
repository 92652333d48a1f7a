import './places.css';
import { useEffect, useRef } from 'react';
import { useBench, useView } from '../../store/react';
import { places } from './places';

/** From the bench to the other places and back. */
export function PlaceNav() {
  const { view } = useBench();
  const here = useView(({ place }) => place);
  const hereRef = useRef<HTMLButtonElement>(null);
  // On a phone the row scrolls. A place that is not in it has nothing to bring into sight.
  useEffect(() => {
    if (here) hereRef.current?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [here]);
  return (
    <nav className="place-nav" aria-label="Places">
      {places.map(
        ({ id, label }) =>
          label !== null && (
            <button
              key={id}
              ref={id === here ? hereRef : undefined}
              type="button"
              aria-current={id === here ? 'page' : undefined}
              onClick={() => view.setState({ place: id, playing: false })}
            >
              {label}
            </button>
          ),
      )}
    </nav>
  );
}

/** The place that lies over the bench; nothing while the bench itself is looked at. */
export function PlaceShown() {
  const here = useView(({ place }) => place);
  const { Place } = places.find(({ id }) => id === here) ?? {};
  return Place ? <Place /> : null;
}
