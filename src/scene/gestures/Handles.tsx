import './handles.css';
import { type RefObject, useEffect, useRef, useState } from 'react';
import type { Handle } from '../../interaction/handles/handle';
import { firstPlace, handlesOf, shapedById, shownHandles } from '../../interaction/handles/handlesOf';
import { itemById, structureById } from '../../model/document/edit';
import type { Aircraft } from '../../model/document/types';
import { formatQuantity } from '../../model/units';
import { useAircraft, useBalance, useBench, useView } from '../../store/react';
import { HandleField } from './HandleField';
import type { HandlePlace } from './handlePlace';
import { useHandleDrag } from './useHandleDrag';

interface HandlesProps {
  readonly place: RefObject<HandlePlace>;
}

/** The handles of what is selected, when that is one thing alone that can be reshaped. */
export function Handles({ place }: HandlesProps) {
  const id = useView(({ selectedId, groupIds, looking, hiddenIds }) =>
    groupIds.length > 1 || looking.exploded || looking.quiet || (selectedId && hiddenIds.includes(selectedId))
      ? null
      : selectedId,
  );
  const bench = useBench();
  const there = useAircraft((aircraft) => id !== null && shapedById(aircraft, id) !== null);
  const inPlace = useBalance(
    ({ loaded }) =>
      id !== null &&
      (bench.reshape.api.getState().pieceId !== null || standsAsGiven(bench.document.current(), loaded, id)),
  );
  return id !== null && there && inPlace ? <HandlesOf key={id} id={id} place={place} /> : null;
}

/** Whether a thing is aboard in the load state shown, and a leg not up: else it is not drawn where its figures are. */
function standsAsGiven(aircraft: Aircraft, loaded: Aircraft, id: string): boolean {
  const [given, shown] = [structureById(aircraft, id), structureById(loaded, id)];
  if (given?.kind !== 'leg' || shown?.kind !== 'leg')
    return shown !== undefined || itemById(loaded, id) !== undefined;
  return given.axleMm.every((mm, axis) => mm === shown.axleMm[axis]);
}

function HandlesOf({ id, place }: HandlesProps & { readonly id: string }) {
  const bench = useBench();
  const units = useView((state) => state.units);
  const view = useView((state) => state.view);
  const thing = useAircraft((aircraft) => shapedById(aircraft, id));
  const [active, setActive] = useState<{ readonly id: string; readonly place: number } | null>(null);
  const elements = useRef(new Map<string, HTMLElement>());
  const field = useRef<HTMLElement>(null);
  const drag = useHandleDrag({ thingId: id, thingName: thing?.name ?? '', place });
  const shown: readonly Handle[] = thing
    ? shownHandles(handlesOf(bench.document.current(), thing), view, active?.place ?? firstPlace(thing))
    : [];
  const chosen = shown.find((handle) => handle.id === active?.id);

  useEffect(() => {
    const here = place.current;
    here.knobs = shown.flatMap((handle) => {
      const element = elements.current.get(handle.id);
      return element ? [{ handle, element }] : [];
    });
    here.field = chosen && field.current ? { element: field.current, handleId: chosen.id } : null;
    here.refresh?.();
  });
  useEffect(() => {
    const here = place.current;
    return () => {
      here.knobs = [];
      here.field = null;
    };
  }, [place]);

  return (
    // biome-ignore lint/a11y/useSemanticElements: knobs on a drawing are no form
    <div className="handles" role="group" aria-label={`Handles of ${thing?.name ?? ''}`}>
      {shown.map((handle) => (
        <div
          key={handle.id}
          ref={(element) => {
            if (element) elements.current.set(handle.id, element);
            else elements.current.delete(handle.id);
          }}
          role="slider"
          tabIndex={0}
          className="handle"
          data-active={handle === chosen}
          data-handle={handle.id}
          aria-label={handle.label}
          aria-valuenow={handle.value}
          aria-valuemin={handle.least}
          aria-valuemax={handle.most}
          aria-valuetext={formatQuantity(handle.value, handle.quantity, units, { fine: true })}
          onFocus={() => setActive({ id: handle.id, place: handle.place })}
          onPointerDown={drag.onPointerDown(handle)}
          onPointerMove={drag.onPointerMove}
          onPointerUp={drag.onPointerUp}
          onPointerCancel={drag.onPointerCancel}
          onLostPointerCapture={drag.onLostPointerCapture}
          onKeyDown={drag.onKeyDown(handle)}
          onKeyUp={drag.onKeyUp(handle)}
          onBlur={drag.onBlur(handle)}
        />
      ))}
      {chosen && thing && (
        <HandleField
          key={chosen.id}
          handle={chosen}
          thingId={id}
          thingName={thing.name}
          onElement={(element) => {
            field.current = element;
          }}
        />
      )}
    </div>
  );
}
