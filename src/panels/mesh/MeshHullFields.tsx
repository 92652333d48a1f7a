import { movedStructure, replaceStructure } from '../../model/document/edit';
import type { Aircraft, Fuselage } from '../../model/document/types';
import { formatNumber } from '../../model/units';
import { useCommitted } from '../../store/react';
import type { Lens } from '../card/structureLens';
import { EditButton } from '../fields/EditButton';
import { Measure } from '../fields/Measure';

/** Where a hull with a surface of its own stands, and the way back to a hull through sections. */
export function MeshHullFields({ lens }: { readonly lens: Lens<'fuselage'> }) {
  const triangles = useCommitted((aircraft) => lens.read(aircraft)?.mesh?.shape.triangles.length ?? 0);
  const moved = (aircraft: Aircraft, axis: 0 | 2, byMm: (hull: Fuselage) => number): Aircraft => {
    const hull = lens.read(aircraft);
    if (!hull) return aircraft;
    const by = byMm(hull);
    return by === 0
      ? aircraft
      : replaceStructure(aircraft, movedStructure(hull, axis === 0 ? [by, 0, 0] : [0, 0, by]));
  };
  return (
    <>
      <p className="hint">
        Its surface is a mesh of {formatNumber(triangles, 0)} triangles: mass, inside and clashes go by it.
      </p>
      <Measure
        label="Nose"
        quantity="length"
        step={`Move ${lens.name}`}
        read={(aircraft) => lens.read(aircraft)?.sections[0]?.stationMm}
        write={(aircraft, mm) => moved(aircraft, 0, ({ sections }) => mm - (sections[0]?.stationMm ?? mm))}
      />
      <Measure
        label="Waterline"
        quantity="length"
        step={`Move ${lens.name}`}
        read={(aircraft) => lens.read(aircraft)?.mesh?.waterlineMm}
        write={(aircraft, mm) => moved(aircraft, 2, ({ mesh }) => mm - (mesh?.waterlineMm ?? mm))}
      />
      <EditButton
        step={`Take the mesh off ${lens.name}`}
        edit={(aircraft) => {
          const hull = lens.read(aircraft);
          if (!hull) return aircraft;
          const { mesh: _mesh, ...plain } = hull;
          return replaceStructure(aircraft, plain);
        }}
      >
        Keep only its sections
      </EditButton>
    </>
  );
}
