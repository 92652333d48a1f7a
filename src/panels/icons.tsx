import type { BodyRole } from '../model/airframe/bodies';
import { roleLooks } from './roleLooks';

/** Line drawings on a 16 × 16 field. */
const drawings = {
  undo: 'M3 6.5h6.5a3.5 3.5 0 0 1 0 7H6M5.5 4 3 6.5 5.5 9',
  redo: 'M13 6.5H6.5a3.5 3.5 0 0 0 0 7H10M10.5 4 13 6.5 10.5 9',
  down: 'm4.5 6.5 3.5 3.5 3.5-3.5',
  up: 'M4.5 9.5 8 6l3.5 3.5',
  plus: 'M8 3v10M3 8h10',
  cross: 'm4 4 8 8M12 4l-8 8',
  lock: 'M4 7.5h8v6H4zM5.5 7.5v-2a2.5 2.5 0 0 1 5 0v2',
  unlocked: 'M4 7.5h8v6H4zM5.5 7.5v-2a2.5 2.5 0 0 1 4.8-1',
  copy: 'M5.5 5.5h8v8h-8zM10.5 5.5v-3h-8v8h3',
  mirror: 'M8 2v12M6 4.5 2.5 11.5H6zM10 4.5l3.5 7H10z',
  seen: 'M1.8 8C3.4 5.3 5.6 4 8 4s4.6 1.3 6.2 4c-1.6 2.7-3.8 4-6.2 4S3.4 10.7 1.8 8zM8 6.2a1.8 1.8 0 1 0 0 3.6 1.8 1.8 0 0 0 0-3.6z',
  hidden: 'M2.5 6c1.5 2.2 3.3 3.3 5.5 3.3S12 8.2 13.5 6M4 8.3l-1.3 1.9M8 9.3v2.5M12 8.3l1.3 1.9',
  bin: 'M3 4.5h10M6.5 4.5v-2h3v2M4.5 4.5l.6 9h5.8l.6-9M7 7v4M9 7v4',
  play: 'M5 3.2v9.6L12.5 8z',
  pause: 'M5.5 3.5v9M10.5 3.5v9',
  tick: 'm3.5 8.5 3 3 6-7',
  warn: 'M8 2.5 14.5 13.5h-13zM8 6.5v3.5M8 11.8v.1',
  bad: 'M5.2 2h5.6L14 5.2v5.6L10.8 14H5.2L2 10.8V5.2zM8 5v4M8 11v.1',
  question:
    'M8 1.8a6.2 6.2 0 1 0 0 12.4A6.2 6.2 0 0 0 8 1.8zM6.2 6.3A1.9 1.9 0 1 1 8.6 8.2c-.4.2-.6.5-.6 1M8 11.3v.1',
  pen: 'M3 13l.7-3L11 2.7l2.3 2.3L6 12.3zM9.3 4.4l2.3 2.3',
  search: 'M7 2.5a4.5 4.5 0 1 0 0 9 4.5 4.5 0 0 0 0-9zM10.5 10.5l3 3',
} as const;

export type IconName = keyof typeof drawings;

export function Icon({ name }: { readonly name: IconName }) {
  return (
    <svg className="icon" viewBox="0 0 16 16" aria-hidden="true">
      <path d={drawings[name]} />
    </svg>
  );
}

/** The small sign of a role: its outline in its colour. */
export function RoleMark({ of }: { readonly of: BodyRole }) {
  const { colour, path, label } = roleLooks[of];
  return (
    <svg className="mark" viewBox="-.56 -1.06 1.12 1.12" role="img" aria-label={label}>
      <path d={path} fill={colour} fillRule="evenodd" />
    </svg>
  );
}

/** The dark quarters of the disc, and its outline. */
export const discPaths = {
  quarters: 'M0 0V-1A1 1 0 0 1 1 0ZM0 0V1A1 1 0 0 1-1 0Z',
  outline: 'M-1 0A1 1 0 0 1 1 0A1 1 0 0 1 -1 0Z',
} as const;

/** The quartered disc that marks a CG on engineering drawings; radius 1. */
export function QuarteredDisc() {
  return (
    <>
      <circle r="1" className="disc-ground" />
      <path d={discPaths.quarters} className="disc-quarters" />
      <circle r="1" className="disc-ring" />
    </>
  );
}
