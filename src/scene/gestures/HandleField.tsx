import { useId, useState } from 'react';
import type { Handle } from '../../interaction/handles/handle';
import { formatQuantity, parseQuantity } from '../../model/units';
import { useBench, useView } from '../../store/react';
import { stepOf } from './useHandleDrag';

interface HandleFieldProps {
  readonly handle: Handle;
  readonly thingId: string;
  readonly thingName: string;
  readonly onElement: (element: HTMLElement | null) => void;
}

/** The figure beside the knob: it runs along while the knob moves, and can be typed over. */
export function HandleField({ handle, thingId, thingName, onElement }: HandleFieldProps) {
  const bench = useBench();
  const units = useView((view) => view.units);
  const [typed, setTyped] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const id = useId();
  const say = (value: number) => formatQuantity(value, handle.quantity, units, { fine: true });
  const forget = () => {
    setTyped(null);
    setFault(null);
  };
  const take = () => {
    if (typed === null || typed === say(handle.value)) return forget();
    const read = parseQuantity(typed, { quantity: handle.quantity, system: units });
    if (!read.ok) return setFault(read.sentence);
    const { least, most } = handle;
    if (read.value < least || read.value > most) {
      return setFault(`Expected ${say(least)} to ${say(most)}, got ${say(read.value)}.`);
    }
    if (!bench.reshape.pickUp(thingId)) return setFault('Something else is in hand.');
    bench.reshape.show(handle.set(read.value));
    const refused = bench.reshape.setDown(stepOf(handle, thingName));
    if (refused !== null) return setFault(refused);
    forget();
  };
  return (
    <div ref={onElement} className="handle-field">
      <label htmlFor={id}>{handle.label}</label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        spellCheck={false}
        value={typed ?? say(handle.value)}
        aria-invalid={fault !== null}
        onPointerDown={(event) => event.stopPropagation()}
        onFocus={(event) => event.currentTarget.select()}
        onChange={(event) => setTyped(event.target.value)}
        onBlur={take}
        onKeyDown={(event) => {
          event.stopPropagation();
          if (event.key === 'Enter') take();
          if (event.key === 'Escape') forget();
        }}
      />
      {fault && <p role="alert">{fault}</p>}
    </div>
  );
}
