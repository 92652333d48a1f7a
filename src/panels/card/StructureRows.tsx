import type { Fuselage, Surface } from '../../model/document/types';
import { RowsTable } from '../fields/RowsTable';
import type { Lens } from './structureLens';

type Section = Fuselage['sections'][number];
type Panel = Surface['panels'][number];

/** A hull's sections, nose to tail. */
export function HullSections({ lens }: { readonly lens: Lens<'fuselage'> }) {
  return (
    <RowsTable<Section>
      title="Sections, from the datum"
      noun="section"
      least={2}
      columns={[
        { key: 'stationMm', label: 'Station', quantity: 'length' },
        { key: 'widthMm', label: 'Width', quantity: 'length' },
        { key: 'heightMm', label: 'Height', quantity: 'length' },
        { key: 'waterlineMm', label: 'Waterline', quantity: 'length' },
        { key: 'roundness', label: 'Roundness', quantity: 'ratio', scale: 0.01 },
      ]}
      read={(aircraft) => lens.read(aircraft)?.sections ?? []}
      write={(aircraft, sections) => lens.change(aircraft, { sections })}
      another={(rows) => {
        const [before, last] = [rows.at(-2), rows.at(-1)];
        return last && before
          ? { ...last, stationMm: 2 * last.stationMm - before.stationMm }
          : { stationMm: 0, widthMm: 50, heightMm: 50, waterlineMm: 0, roundness: 0.7 };
      }}
    />
  );
}

/** A surface's panels, root to tip. */
export function PanelRows({ lens }: { readonly lens: Lens<'surface'> }) {
  return (
    <RowsTable<Panel>
      title="Panels, root to tip"
      noun="panel"
      least={1}
      columns={[
        { key: 'spanMm', label: 'Span', quantity: 'length' },
        { key: 'tipChordMm', label: 'Tip chord', quantity: 'length' },
        { key: 'sweepMm', label: 'Sweep', quantity: 'length' },
        { key: 'dihedralDeg', label: 'Dihedral', quantity: 'angle' },
        { key: 'twistDeg', label: 'Twist', quantity: 'angle' },
        { key: 'tipThicknessPct', label: 'Thickness', quantity: 'ratio' },
      ]}
      read={(aircraft) => lens.read(aircraft)?.panels ?? []}
      write={(aircraft, panels) => lens.change(aircraft, { panels })}
      another={(rows) =>
        rows.at(-1) ?? {
          spanMm: 300,
          tipChordMm: 150,
          sweepMm: 0,
          dihedralDeg: 0,
          twistDeg: 0,
          tipThicknessPct: 12,
        }
      }
    />
  );
}
