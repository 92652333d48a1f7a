import { normalise } from '../../engine/geometry/vec3';
import { shapeFault } from '../../engine/mass/shapeFault';
import { elementPieces } from '../airframe/pieces';
import { BARE_AIRFRAME_ID, OUTLET_ID } from '../document/ids';
import { leastSizeMm } from '../document/schema/limits';
import type { Aircraft, StructurePiece } from '../document/types';
import { type Checked, collections, soundItems } from './checked';
import { type Fault, type Path, toldFault, valueAt } from './fault';
import { fitFaults } from './fitFaults';
import { fuelFaults } from './fuelFaults';
import { meshHullFault } from './meshHullFault';
import { placesOf } from './places';
import { powerFaults } from './powerFaults';
import { statedForFaults, switchFaults } from './switchFaults';
import { talkFaults } from './talkFaults';
import { tankFaults } from './tankFaults';
import { traceFaults } from './traceFaults';
import { twinFaults } from './twinFaults';
import { weighFaults } from './weighFaults';

/**
 * What the schema cannot see: ids, references, shapes that enclose nothing, limits the wrong way round.
 * Whatever the schema already found fault with is passed over, all else is checked.
 */
export function crossFaults(json: unknown, broken: readonly Fault[]): readonly Fault[] {
  const places = placesOf(broken);
  const sound = (...at: Path) => valueAt(json, at) !== undefined && !places.touches(at);
  const checked: Checked = {
    aircraft: json as Aircraft,
    sound,
    tell: (at, sentence, expected, received) => toldFault(json, at, sentence, expected, received),
  };
  return [
    ...idFaults(checked),
    ...structureFaults(checked),
    ...bandFaults(checked),
    ...marginFaults(checked),
    ...fuelFaults(checked),
    ...tankFaults(checked),
    ...partFaults(checked),
    ...twinFaults(checked),
    ...switchFaults(checked),
    ...statedForFaults(checked),
    ...fitFaults(checked),
    ...weighFaults(checked),
    ...powerFaults(checked),
    ...traceFaults(checked),
    ...talkFaults(checked),
  ];
}

/** Every fault that the cross checks find in a document that already has the right types. */
export const aircraftFaults = (aircraft: Aircraft): readonly Fault[] => crossFaults(aircraft, []);

function idFaults({ aircraft, sound, tell }: Checked): readonly Fault[] {
  const faults: Fault[] = [];
  const firstUse = new Map<string, string>([
    [OUTLET_ID, 'the engine or dump valve'],
    [BARE_AIRFRAME_ID, 'the bare airframe as weighed'],
  ]);
  for (const key of collections) {
    const list: unknown = aircraft[key];
    if (!Array.isArray(list)) continue;
    for (const [index, item] of list.entries()) {
      if (!sound(key, index, 'id')) continue;
      const { id, name } = item as { id: string; name: unknown };
      const user = firstUse.get(id);
      if (user !== undefined) {
        const sentence = `the id "${id}" already stands for ${user}; every id must be unique in the file.`;
        faults.push(tell([key, index, 'id'], sentence, 'an id of its own', `"${id}"`));
      } else firstUse.set(id, typeof name === 'string' ? `"${name}"` : `${key}[${index}]`);
    }
  }
  return faults;
}

function structureFaults(checked: Checked): readonly Fault[] {
  return soundItems(checked, 'structure').flatMap(({ item, index }) => {
    if (item.kind === 'fuselage') {
      const order = sectionOrderFaults(item.sections, index, checked);
      if (order.length > 0) return order;
    }
    const sentence = pointFault(item) ?? firstShapeFault(item) ?? meshHullFault(item);
    return sentence
      ? [checked.tell(['structure', index], sentence, 'a shape that encloses a volume', `a ${item.kind}`)]
      : [];
  });
}

function sectionOrderFaults(
  sections: Extract<StructurePiece, { kind: 'fuselage' }>['sections'],
  element: number,
  { tell }: Checked,
): readonly Fault[] {
  return sections.flatMap(({ stationMm }, index) => {
    const before = sections[index - 1]?.stationMm;
    if (before === undefined || stationMm - before >= LEAST_APART_MM) return [];
    const at = ['structure', element, 'sections', index, 'stationMm'];
    if (stationMm > before) {
      const close = `sections run from nose to tail: expected at least ${leastSizeMm} mm aft of ${before} mm, got ${stationMm} mm.`;
      return [tell(at, close, `at least ${leastSizeMm} mm aft of ${before}`, String(stationMm))];
    }
    const sentence = `sections run from nose to tail: expected more than ${before} mm, got ${stationMm} mm.`;
    return [tell(at, sentence, `more than ${before}`, String(stationMm))];
  });
}

/** The least size of anything, less what a station as large as they come may be rounded by (its spacing of doubles, twice). */
const LEAST_APART_MM = leastSizeMm - 2 ** -35;

function pointFault(item: StructurePiece): string | null {
  if (item.kind === 'boom' && same(item.frontMm, item.rearMm))
    return 'frontMm and rearMm are the same point.';
  if (item.kind === 'leg') {
    if (same(item.topMm, item.axleMm)) return 'topMm and axleMm are the same point.';
    if (item.retract && !normalise(item.retract.axis)) return 'the axis of retract has no direction.';
    if (item.spindle && !normalise(item.spindle)) return 'the spindle has no direction.';
  }
  return null;
}

const same = (a: readonly number[], b: readonly number[]) => a.every((value, axis) => value === b[axis]);

function firstShapeFault(item: StructurePiece): string | null {
  for (const { shape } of elementPieces(item)) {
    const sentence = shapeFault(shape);
    if (sentence) return sentence;
  }
  return null;
}

function partFaults(checked: Checked): readonly Fault[] {
  return soundItems(checked, 'parts').flatMap(({ item: { shape }, index }) => {
    const sentence = shapeFault(shape);
    const at = ['parts', index, 'shape'];
    return sentence ? [checked.tell(at, sentence, 'a shape that encloses a volume', `a ${shape.kind}`)] : [];
  });
}

function bandFaults({ aircraft: { targetBand, structure, referencePoints }, sound, tell }: Checked) {
  if (!targetBand || !sound('targetBand')) return [];
  const faults: Fault[] = [];
  const [forward, aft, unit, forwardKey] =
    targetBand.by === 'station'
      ? [targetBand.forwardMm, targetBand.aftMm, 'mm', 'forwardMm']
      : [targetBand.forwardPct, targetBand.aftPct, '% MAC', 'forwardPct'];
  if (forward >= aft) {
    const sentence = `the forward limit must lie ahead of the aft one: expected less than ${aft} ${unit}, got ${forward} ${unit}.`;
    faults.push(tell(['targetBand', forwardKey], sentence, `less than ${aft}`, String(forward)));
  }
  if (targetBand.by === 'mac' && Array.isArray(structure)) {
    const surface = structure.find((element) => element?.id === targetBand.surfaceId);
    if (surface?.kind !== 'surface') {
      const sentence = `"${targetBand.surfaceId}" is not a surface of this aircraft.`;
      faults.push(
        tell(['targetBand', 'surfaceId'], sentence, 'the id of a surface', `"${targetBand.surfaceId}"`),
      );
    }
  }
  const from = targetBand.by === 'station' ? targetBand.statedFrom : undefined;
  if (from !== undefined && Array.isArray(referencePoints)) {
    if (!referencePoints.some((point) => point?.id === from)) {
      const sentence = `there is no reference point "${from}".`;
      faults.push(tell(['targetBand', 'statedFrom'], sentence, 'the id of a reference point', `"${from}"`));
    }
  }
  return faults;
}

function marginFaults({ aircraft: { stability }, sound, tell }: Checked): readonly Fault[] {
  const range = stability?.marginRange;
  if (!range || !sound('stability') || range.minPct < range.maxPct) return [];
  const sentence = `the least margin must be less than the most: expected less than ${range.maxPct} % MAC, got ${range.minPct} % MAC.`;
  const at = ['stability', 'marginRange', 'minPct'];
  return [tell(at, sentence, `less than ${range.maxPct}`, String(range.minPct))];
}
