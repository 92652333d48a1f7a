import * as v from 'valibot';
import { difference, meansSame } from '../document/difference';
import { tankShape } from '../document/schema/shapes';
import type { Aircraft } from '../document/types';
import { asVariant, LEAVABLE, sharedAircraft, type Variant, variantFrom } from '../document/variants';
import { type Fault, fault, type Path, toldFault } from './fault';
import { crossFaults } from './faults';
import { schemaFaults } from './schemaFaults';

/**
 * What is wrong with the variants of an aircraft that is sound in itself: names that stand for nothing, and variants that
 * would be no sound aircraft.
 */
export function variantFaults(aircraft: Aircraft): readonly Fault[] {
  const { variants } = aircraft;
  if (!variants) return [];
  const named = nameFaults(aircraft, variants);
  if (named.length > 0) return named;
  const shared = sharedAircraft(aircraft);
  const broken = sharedFaults(aircraft, shared);
  if (broken.length > 0) return broken;
  return variants.list.flatMap((variant, index) =>
    variant.id === variants.chosenId ? [] : eachFaults(aircraft, shared, variant, index),
  );
}

type Variants = NonNullable<Aircraft['variants']>;
const AT_SHARED: Path = ['variants', 'shared'];

function nameFaults(aircraft: Aircraft, { chosenId, list }: Variants): readonly Fault[] {
  const faults: Fault[] = [];
  const tell = (at: Path, words: string, expected: string, received: string) =>
    faults.push(toldFault(aircraft, ['variants', ...at], words, expected, received));
  if (!list.some(({ id }) => id === chosenId)) {
    tell(['chosenId'], `there is no variant "${chosenId}".`, 'the id of a variant', `"${chosenId}"`);
  }
  for (const [index, { id, name, without, changes }] of list.entries()) {
    if (list.findIndex((other) => other.id === id) < index) {
      tell(
        ['list', index, 'id'],
        `another variant has the id "${id}" already.`,
        'an id of its own',
        `"${id}"`,
      );
    }
    if (id === chosenId && (without ?? changes)) {
      const words = `“${name}” is what stands in this file, so nothing can be said of it besides: take out without and changes, or choose another.`;
      tell(['list', index], words, 'no differences', 'some');
    }
  }
  return faults;
}

/** What the variants share must be an aircraft itself, and this one must be it but for what variants may differ in. */
function sharedFaults(aircraft: Aircraft, shared: Aircraft): readonly Fault[] {
  const { variants: _, ...alone } = shared;
  const broken = schemaFaults(alone);
  const faults = broken.length > 0 ? broken : crossFaults(alone, []);
  if (faults.length > 0)
    return faults.map((found) => inside(aircraft, AT_SHARED, 'in what the variants share', found));
  const again = asVariant(shared, { id: 'x', name: 'x', ...variantFrom(shared, aircraft) });
  const [off] = difference(aircraft, again);
  if (meansSame({ ...again, variants: 0 }, { ...aircraft, variants: 0 })) return [];
  const what = off ? `${off.in}${off.id === undefined ? '' : ` "${off.id}"`}` : 'the order of something';
  const words = `what the variants share differs from this one in what they cannot differ in: ${what}.`;
  return [toldFault(aircraft, AT_SHARED, words, 'the same', 'another')];
}

function eachFaults(aircraft: Aircraft, shared: Aircraft, variant: Variant, index: number): readonly Fault[] {
  const faults: Fault[] = [];
  const here = ['variants', 'list', index];
  const tell = (at: Path, words: string, expected: string, received: string) =>
    faults.push(toldFault(aircraft, [...here, ...at], words, expected, received));
  const things = new Set(LEAVABLE.flatMap((key) => shared[key].map(({ id }) => id)));
  for (const [at, id] of (variant.without ?? []).entries()) {
    if (things.has(id)) continue;
    tell(
      ['without', at],
      `there is no "${id}" that can be left out.`,
      'the id of a part, tank or element',
      `"${id}"`,
    );
  }
  for (const [at, change] of (variant.changes ?? []).entries()) {
    const words = changeFault(shared, change);
    if (words) tell(['changes', at], words, 'what such a thing can differ in', 'something else');
  }
  if (faults.length > 0) return faults;
  const { variants: _, ...alone } = asVariant(shared, variant);
  return crossFaults(alone, []).map((found) => inside(aircraft, here, `as “${variant.name}”`, found));
}

function changeFault(shared: Aircraft, change: NonNullable<Variant['changes']>[number]): string | null {
  const { of, massG, emptyMassG, startMl, shape } = change;
  if (shared.parts.some(({ id }) => id === of)) {
    return emptyMassG === undefined && startMl === undefined
      ? null
      : `"${of}" is a part: emptyMassG and startMl are said of tanks.`;
  }
  if (!shared.tanks.some(({ id }) => id === of)) return `there is no part or tank "${of}".`;
  if (massG !== undefined) return `"${of}" is a tank: its mass is called emptyMassG.`;
  return shape === undefined || v.is(tankShape, shape)
    ? null
    : `"${of}" is a tank, and a ${shape.kind} holds no liquid.`;
}

/** A fault of an aircraft that is not written out in the file, at the place that it comes from. */
function inside(aircraft: Aircraft, at: Path, where: string, { sentence, expected, received }: Fault): Fault {
  return { ...fault(aircraft, at, expected, received), sentence: `${where}: ${sentence}` };
}
