import type { Aircraft, Part } from '../../model/document/types';
import { useCommitted } from '../../store/react';
import { Choice } from '../fields/Choice';
import { Measure } from '../fields/Measure';
import { RowsTable } from '../fields/RowsTable';
import { builtLabel, dimensionsOf, type PlainKind, plainShapes, shapeAs, withDimension } from './shapes';

type PartShape = Part['shape'];
type LoftRow = Extract<PartShape, { kind: 'loft' }>['sections'][number];

interface ShapeFieldsProps {
  readonly name: string;
  /** Kinds that this item cannot have. */
  readonly without?: readonly PlainKind[];
  readonly read: (aircraft: Aircraft) => PartShape | undefined;
  readonly write: (aircraft: Aircraft, shape: PartShape) => Aircraft;
}

/** Size by shape: what kind it is, and each of its dimensions. */
export function ShapeFields({ name, without = [], read, write }: ShapeFieldsProps) {
  const shape = useCommitted(read);
  if (!shape) return null;
  const options = plainShapes
    .filter(({ kind }) => !without.includes(kind))
    .map(({ kind, label }) => ({ value: kind as string, label }));
  const built = builtLabel(shape.kind);
  return (
    <>
      <Choice
        label="Shape"
        step={`Change the shape of ${name}`}
        options={built ? [{ value: shape.kind, label: built }, ...options] : options}
        read={(aircraft) => read(aircraft)?.kind ?? 'box'}
        write={(aircraft, kind) => {
          const now = read(aircraft);
          return now && kind !== now.kind ? write(aircraft, shapeAs(now, kind as PlainKind)) : aircraft;
        }}
      />
      {dimensionsOf(shape).map(({ key, label }) => (
        <Measure
          key={key}
          label={label}
          quantity="length"
          step={`Change the ${label.toLowerCase()} of ${name}`}
          read={(aircraft) => {
            const now = read(aircraft);
            return now ? dimensionsOf(now).find((dimension) => dimension.key === key)?.valueMm : null;
          }}
          write={(aircraft, valueMm) => {
            const now = read(aircraft);
            return now ? write(aircraft, withDimension(now, key, valueMm)) : aircraft;
          }}
        />
      ))}
      {shape.kind === 'loft' && (
        <RowsTable<LoftRow>
          title="Sections"
          noun="section"
          least={2}
          columns={[
            { key: 'xMm', label: 'Along', quantity: 'length' },
            { key: 'widthMm', label: 'Width', quantity: 'length' },
            { key: 'heightMm', label: 'Height', quantity: 'length' },
            { key: 'centreZMm', label: 'Centre up', quantity: 'length' },
            { key: 'roundness', label: 'Roundness', quantity: 'ratio', scale: 0.01 },
          ]}
          read={(aircraft) => {
            const now = read(aircraft);
            return now?.kind === 'loft' ? now.sections : [];
          }}
          write={(aircraft, sections) => write(aircraft, { kind: 'loft', sections } as PartShape)}
          another={(rows) => {
            const last = rows.at(-1);
            const before = rows.at(-2);
            const xMm = last && before ? 2 * last.xMm - before.xMm : 0;
            return last
              ? { ...last, xMm }
              : { xMm, widthMm: 20, heightMm: 20, centreYMm: 0, centreZMm: 0, roundness: 0 };
          }}
        />
      )}
    </>
  );
}
