import { sourceRefusal, withMassSource } from '../../model/airframe/massSource';
import { replaceStructure, structureById } from '../../model/document/edit';
import type { Aircraft } from '../../model/document/types';
import type { Quantity } from '../../model/units';
import { useCommitted } from '../../store/react';
import { weightsAlong } from '../beam/weights';
import { Choice, Tick } from '../fields/Choice';
import { Measure } from '../fields/Measure';
import { Fold } from '../fold/Fold';
import { Live } from '../Live';
import { MeshHullFields } from '../mesh/MeshHullFields';
import { useReadings } from '../readings';
import { CutFields } from './CutFields';
import { JoinsBodyField } from './JoinsBodyField';
import { MassSourceFields } from './MassSourceFields';
import { PlaceFields } from './PlaceFields';
import { PlusMinusFields } from './PlusMinusFields';
import { PointFields } from './PointFields';
import { RetractFields } from './RetractFields';
import { ShapeFields } from './ShapeFields';
import { MassSource, SizeSource } from './SourceFields';
import { HullSections, PanelRows } from './StructureRows';
import { SwitchTick } from './SwitchTick';
import { type Kind, type Lens, lensOn, type PieceOf } from './structureLens';
import { momentSummary } from './summaries';
import { Working } from './Working';

interface FigureProps<K extends Kind> {
  readonly lens: Lens<K>;
  readonly of: keyof PieceOf<K> & string;
  readonly label: string;
  readonly quantity?: Quantity;
}

function Figure<K extends Kind>({ lens, of, label, quantity = 'length' }: FigureProps<K>) {
  return (
    <Measure
      label={label}
      quantity={quantity}
      step={`Change the ${label.toLowerCase()} of ${lens.name}`}
      read={(aircraft) => lens.read(aircraft)?.[of] as number | undefined}
      write={(aircraft, value) => lens.change(aircraft, { [of]: value } as Partial<PieceOf<K>>)}
    />
  );
}

const openEnds = [
  { value: '', label: 'None, walled all round' },
  { value: 'front', label: 'In front' },
  { value: 'rear', label: 'At the rear' },
  { value: 'both', label: 'Both' },
];

const openOf = (value: string) => (['front', 'rear', 'both'] as const).find((end) => end === value);

/** The figures of a piece of structure. */
export function StructureCard({ id, name }: { readonly id: string; readonly name: string }) {
  const say = useReadings();
  const kind = useCommitted((aircraft) => structureById(aircraft, id)?.kind);
  const paired = useCommitted((aircraft) => structureById(aircraft, id)?.sides === 'both');
  const retracts = useCommitted((aircraft) => {
    const piece = structureById(aircraft, id);
    return piece?.kind === 'leg' && piece.retract !== undefined;
  });
  if (!kind) return null;
  return (
    <>
      <section>
        <div className="field">
          <span className="field-name">In all</span>
          <span className="figure stated">
            <Live
              read={({ balance }) =>
                say.mass(weightsAlong(balance.get(), 0).find(({ sourceId }) => sourceId === id)?.massG ?? 0)
              }
            />
          </span>
        </div>
        <Choice
          label="Sides"
          step={`Change the sides of ${name}`}
          options={[
            { value: 'centre', label: 'One piece' },
            { value: 'both', label: 'A mirrored pair' },
          ]}
          read={(aircraft) => structureById(aircraft, id)?.sides ?? 'centre'}
          write={(aircraft, sides) => {
            const piece = structureById(aircraft, id);
            return piece
              ? replaceStructure(aircraft, { ...piece, sides: sides as 'centre' | 'both' })
              : aircraft;
          }}
        />
        <MassSource
          name={name}
          id={id}
          read={(aircraft) => structureById(aircraft, id)}
          write={(aircraft, fields) => changed(aircraft, id, fields)}
          refuses={(aircraft, source) => sourceRefusal(structureById(aircraft, id), source)}
        />
        <SizeSource
          name={name}
          read={(aircraft) => structureById(aircraft, id)}
          write={(aircraft, fields) => changed(aircraft, id, fields)}
        />
        <PlusMinusFields
          name={name}
          read={(aircraft) => structureById(aircraft, id)}
          write={(aircraft, fields) => changed(aircraft, id, fields)}
        />
        {!retracts && <SwitchTick id={id} name={name} kind="on-stand" />}
        {kind !== 'leg' && (
          <MassSourceFields
            name={name}
            paired={paired}
            read={(aircraft) => {
              const piece = structureById(aircraft, id);
              return piece?.kind === 'leg' ? undefined : piece;
            }}
            write={(aircraft, mass) => {
              const piece = structureById(aircraft, id);
              return piece && piece.kind !== 'leg'
                ? replaceStructure(aircraft, withMassSource(piece, mass))
                : aircraft;
            }}
          />
        )}
      </section>
      <section>
        <KindFields id={id} kind={kind} name={name} />
      </section>
      <Fold id="working" title="Working" summary={momentSummary(id, say)}>
        <Working id={id} />
      </Fold>
    </>
  );
}

function changed(aircraft: Aircraft, id: string, fields: object): Aircraft {
  const piece = structureById(aircraft, id);
  return piece ? replaceStructure(aircraft, { ...piece, ...fields }) : aircraft;
}

function KindFields({ id, kind, name }: { readonly id: string; readonly kind: Kind; readonly name: string }) {
  const meshHull = useCommitted((aircraft) => {
    const piece = structureById(aircraft, id);
    return piece?.kind === 'fuselage' && piece.mesh !== undefined;
  });
  switch (kind) {
    case 'fuselage': {
      const lens = lensOn(id, kind, name);
      return (
        <>
          <Figure lens={lens} of="buttlineMm" label="Buttline" />
          <Figure lens={lens} of="skinMm" label="Skin" />
          <Choice
            label="Open ends"
            step={`Change the open ends of ${name}`}
            options={openEnds}
            read={(aircraft) => lens.read(aircraft)?.open ?? ''}
            write={(aircraft, open) => lens.change(aircraft, { open: openOf(open) })}
          />
          {meshHull ? <MeshHullFields lens={lens} /> : <HullSections lens={lens} />}
        </>
      );
    }
    case 'surface': {
      const lens = lensOn(id, kind, name);
      return (
        <>
          <PointFields
            title="Root leading edge"
            step={`Move ${name}`}
            read={(aircraft) => lens.read(aircraft)?.rootMm}
            write={(aircraft, rootMm) => lens.change(aircraft, { rootMm })}
          />
          <Figure lens={lens} of="rootChordMm" label="Root chord" />
          <Figure lens={lens} of="rootThicknessPct" label="Thickness" quantity="ratio" />
          <Figure lens={lens} of="incidenceDeg" label="Incidence" quantity="angle" />
          <Figure lens={lens} of="cantDeg" label="Cant" quantity="angle" />
          <JoinsBodyField id={id} lens={lens} />
          <PanelRows lens={lens} />
          <Tick
            label="Cut away inside a hull, so that parts may stand there"
            step={`Say whether ${name} is cut away inside a hull`}
            read={(aircraft) => lens.read(aircraft)?.openToHull === true}
            write={(aircraft, openToHull) => lens.change(aircraft, { openToHull })}
          />
        </>
      );
    }
    case 'boom': {
      const lens = lensOn(id, kind, name);
      return (
        <>
          <PointFields
            title="Front"
            step={`Move ${name}`}
            read={(aircraft) => lens.read(aircraft)?.frontMm}
            write={(aircraft, frontMm) => lens.change(aircraft, { frontMm })}
          />
          <Figure lens={lens} of="frontDiameterMm" label="Front diameter" />
          <PointFields
            title="Rear"
            step={`Move ${name}`}
            read={(aircraft) => lens.read(aircraft)?.rearMm}
            write={(aircraft, rearMm) => lens.change(aircraft, { rearMm })}
          />
          <Figure lens={lens} of="rearDiameterMm" label="Rear diameter" />
        </>
      );
    }
    case 'leg': {
      const lens = lensOn(id, kind, name);
      return (
        <>
          <PointFields
            title="Top"
            step={`Move ${name}`}
            read={(aircraft) => lens.read(aircraft)?.topMm}
            write={(aircraft, topMm) => lens.change(aircraft, { topMm })}
          />
          <PointFields
            title="Axle"
            step={`Move ${name}`}
            read={(aircraft) => lens.read(aircraft)?.axleMm}
            write={(aircraft, axleMm) => lens.change(aircraft, { axleMm })}
          />
          <Figure lens={lens} of="strutMassG" label="Strut mass" quantity="mass" />
          <Figure lens={lens} of="strutDiameterMm" label="Strut diameter" />
          <Figure lens={lens} of="wheelMassG" label="Wheel mass" quantity="mass" />
          <Figure lens={lens} of="wheelDiameterMm" label="Wheel diameter" />
          <Figure lens={lens} of="wheelWidthMm" label="Wheel width" />
          <RetractFields name={name} read={lens.read} write={lens.change} />
        </>
      );
    }
    case 'block': {
      const lens = lensOn(id, kind, name);
      return (
        <>
          <PlaceFields
            name={name}
            read={lens.read}
            write={(aircraft, place) => lens.change(aircraft, place)}
          />
          <ShapeFields
            name={name}
            read={(aircraft) => lens.read(aircraft)?.shape}
            write={(aircraft, shape) => lens.change(aircraft, { shape })}
          />
          <CutFields id={id} name={name} read={lens.read} write={lens.change} />
        </>
      );
    }
  }
}
