import * as v from 'valibot';
import {
  about,
  angleDeg,
  id,
  label,
  list,
  massG,
  plusMinusG,
  plusMinusMm,
  pointMm,
  record,
  volumeMl,
} from './fields';
import { mostOf } from './limits';
import { power } from './power';
import { partShape } from './shapes';
import { massFrom, sizeFrom } from './sources';
import { tensor } from './tensor';
import { day } from './weighIn';

/** What a part or tank need not say: null where this variant does not say it. */
const notSaid = <S extends v.GenericSchema>(schema: S) => v.optional(v.nullable(schema));

/** What may be otherwise in a variant: where a part or tank stands, how large it is, what it weighs, what it holds, what it is to the wiring. */
const change = record(
  {
    of: about(id, 'the part or tank'),
    positionMm: v.optional(pointMm),
    yawDeg: v.optional(angleDeg),
    pitchDeg: v.optional(angleDeg),
    rollDeg: v.optional(angleDeg),
    shape: v.optional(partShape),
    massG: about(v.optional(massG), 'of a part'),
    emptyMassG: about(v.optional(massG), 'of a tank'),
    startMl: about(v.optional(v.nullable(volumeMl)), 'of a tank'),
    plusMinusG: notSaid(plusMinusG),
    plusMinusMm: notSaid(plusMinusMm),
    inertiaGmm2: notSaid(tensor),
    massFrom: notSaid(massFrom),
    sizeFrom: notSaid(sizeFrom),
    weighedOn: notSaid(day),
    power: notSaid(power),
  },
  'what is otherwise about a part or tank; all else of it is shared',
);

const variant = record({
  id,
  name: label,
  without: about(
    v.optional(list(id)),
    'ids of the parts, tanks and structure that it leaves out; not said of the variant that stands in this file',
  ),
  changes: about(v.optional(list(change)), 'not said of the variant that stands in this file'),
});

const key = v.pipe(
  v.string('Expected a key'),
  v.regex(/^[a-z][A-Za-z0-9]*$/, 'Expected a key of the aircraft'),
);
const entry = v.looseObject({}, 'Expected an object');

/** One step from the aircraft as it stands in the file to what its variants share. */
const step = record({
  in: about(key, 'the key of the aircraft that it is about'),
  id: about(v.optional(id), 'the entry of that list'),
  at: about(
    v.optional(
      v.pipe(v.number('Expected a whole number'), v.integer('Expected a whole number'), v.minValue(0)),
    ),
    'where in the list an entry is put',
  ),
  put: about(v.optional(entry), 'an entry that this variant leaves out'),
  set: about(v.optional(entry), 'what is otherwise in an entry'),
  unset: about(v.optional(list(v.string('Expected a key'))), 'what is not said of an entry'),
  keys: about(v.optional(list(v.string('Expected a key'))), 'the order of what is said of an entry'),
  drop: about(v.optional(v.boolean('Expected true or false')), 'the entry is only in this variant'),
  value: about(v.optional(v.unknown()), 'what stands under the key instead'),
});

export const variants = record(
  {
    chosenId: about(id, 'the variant that stands in this file'),
    list: list(variant, mostOf.variants),
    shared: about(
      list(step, mostOf.parts),
      'where what all variants share is otherwise than the variant that stands in this file',
    ),
  },
  'variants of this aircraft; one of them is what stands in the rest of the file',
);
