import type { Aircraft } from '../../model/document/types';
import { Measure } from './Measure';

const sizes = [
  { key: 'lengthMm', label: 'Length' },
  { key: 'widthMm', label: 'Width' },
  { key: 'heightMm', label: 'Height' },
] as const;

type Size = Readonly<Record<(typeof sizes)[number]['key'], number>>;

interface SizeFieldsProps {
  readonly name: string;
  readonly read: (aircraft: Aircraft) => Size | undefined;
  readonly write: (aircraft: Aircraft, change: Partial<Size>) => Aircraft;
}

/** Length, width and height of a box. */
export function SizeFields({ name, read, write }: SizeFieldsProps) {
  return sizes.map(({ key, label }) => (
    <Measure
      key={key}
      label={label}
      quantity="length"
      step={`Change the ${label.toLowerCase()} of ${name}`}
      read={(aircraft) => read(aircraft)?.[key]}
      write={(aircraft, mm) => write(aircraft, { [key]: mm })}
    />
  ));
}
