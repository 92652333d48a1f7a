import { describe, expect, test } from 'vitest';
import { addPart, placeItem, removeItem, updatePart } from '../../src/model/document/edit';
import type { Aircraft } from '../../src/model/document/types';
import { addVariant } from '../../src/model/document/variantEdits';
import { createNoticeStore } from '../../src/store/noticeStore';
import { settleEdit } from '../../src/store/settleEdit';
import { aircraftOf, boxBlock, boxPart } from '../model/aircraft';

const aircraft = addVariant(
  aircraftOf(
    [boxBlock('frame', [500, 0, 0], { by: 'weighed', massG: 100 })],
    [boxPart('pack', 200, [300, 0, 0]), boxPart('camera', 100, [800, 0, 0])],
  ),
  'Aft',
);

function said(scope: 'this' | 'all', next: Aircraft): string {
  const notice = createNoticeStore();
  settleEdit(aircraft, next, scope, notice);
  return notice.api
    .getState()
    .notices.map(({ text }) => text)
    .join(' ');
}

describe('an edit for this variant only', () => {
  test.each<[string, Aircraft]>([
    ['a name', updatePart(aircraft, 'pack', { name: 'Flight pack' })],
    ['a lock', updatePart(aircraft, 'pack', { locked: true, massG: 250 })],
    [
      'a heavier airframe',
      { ...aircraft, structure: [boxBlock('frame', [500, 0, 0], { by: 'weighed', massG: 120 })] },
    ],
    ['limits', { ...aircraft, targetBand: { by: 'station', forwardMm: 300, aftMm: 320 } }],
  ])('says so where it counts for all: %s', (_, next) => {
    expect(said('this', next)).toMatch(/counts for all variants/);
    expect(said('all', next)).toBe('');
  });

  test.each<[string, Aircraft]>([
    ['a place', placeItem(aircraft, 'pack', [310, 0, 0])],
    ['a mass', updatePart(aircraft, 'pack', { massG: 210, massFrom: 'weighed' })],
    ['a part more', addPart(aircraft, boxPart('x', 10, [0, 0, 0])).aircraft],
    ['a part less', removeItem(aircraft, 'camera')],
    ['a note', { ...aircraft, notes: 'Flown' }],
  ])('says nothing where it does not: %s', (_, next) => expect(said('this', next)).toBe(''));
});
