import { useState } from 'react';
import { useBench, useView } from '../store/react';
import { LAYERS, type Layer, type Looking, toggleLayer, toggleLooking } from '../store/viewStore';

const NAMES: Readonly<Record<Layer, string>> = {
  cg: 'CG',
  stability: 'stability',
  fit: 'fit',
  leads: 'leads',
  rooms: 'rooms',
  inertia: 'inertia',
};

const WAYS: readonly { readonly way: keyof Looking; readonly name: string; readonly does: string }[] = [
  { way: 'cut', name: 'cut', does: 'Cut along the plane of symmetry (C)' },
  { way: 'xray', name: 'x-ray', does: 'Hardly any skin (X)' },
  { way: 'exploded', name: 'lift', does: 'Lift out what is carried, to look at it (E)' },
  { way: 'quiet', name: 'quiet', does: 'Only the CG and the band (Q)' },
];

/** On the stage: what it shows besides the aircraft, how it is looked into, and all of it again; folded until wanted. */
export function StageBar() {
  const [open, setOpen] = useState(false);
  return (
    <div className="stage-bar" role="toolbar" aria-label="What the stage shows">
      <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>
        {open ? 'less' : 'show…'}
      </button>
      {open && <Choices />}
    </div>
  );
}

function Choices() {
  const bench = useBench();
  const layers = useView((state) => state.layers);
  const looking = useView((state) => state.looking);
  const tilts = useView((state) => state.tilts);
  const held = useView(({ attitude }) => attitude.pitchDeg !== 0 || attitude.rollDeg !== 0);
  return (
    <>
      <span className="stage-bar-group">
        {LAYERS.map((layer) => (
          <button
            key={layer}
            type="button"
            aria-pressed={layers[layer]}
            onClick={() => toggleLayer(bench.view, layer)}
          >
            {NAMES[layer]}
          </button>
        ))}
      </span>
      <span className="stage-bar-group">
        {WAYS.map(({ way, name, does }) => (
          <button
            key={way}
            type="button"
            title={does}
            aria-pressed={looking[way]}
            onClick={() => toggleLooking(bench.view, way)}
          >
            {name}
          </button>
        ))}
        {held && (
          <button
            type="button"
            title="What is seen to tilt"
            onClick={() => bench.view.setState({ tilts: tilts === 'aircraft' ? 'world' : 'aircraft' })}
          >
            {tilts === 'aircraft' ? 'aircraft tilts' : 'world tilts'}
          </button>
        )}
        <button type="button" title="All of the aircraft (F)" onClick={() => bench.eye.ask({ kind: 'fit' })}>
          fit to view
        </button>
      </span>
    </>
  );
}
