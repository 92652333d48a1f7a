import { expect, test } from 'vitest';
import { placeItem, removeItem } from '../../src/model/document/edit';
import { addVariant } from '../../src/model/document/variantEdits';
import { chooseVariant } from '../../src/model/document/variants';
import { writeAircraft } from '../../src/model/document/write';
import { goBack } from '../../src/panels/revisions/goBack';
import { createBench } from '../../src/store/bench';
import { aircraftOf, boxBlock, boxPart } from '../model/aircraft';

test.each(['this', 'all'] as const)(
  'a revision comes back to the byte, its variants too, while changes count for %s',
  (editScope) => {
    const plain = aircraftOf(
      [boxBlock('frame', [500, 0, 0], { by: 'weighed', massG: 100 })],
      [boxPart('pack', 200, [300, 0, 0]), boxPart('camera', 100, [800, 0, 0])],
    );
    const revision = addVariant(plain, 'Aft');
    const bench = createBench(revision, { editScope });
    const { document } = bench;
    document.commit('Move', placeItem(document.current(), 'pack', [600, 0, 0]));
    document.commit('Remove', removeItem(document.current(), 'camera'));
    document.commitVariants('Choose', chooseVariant(document.current(), 'as-built'));
    document.commitVariants('Add', addVariant(document.current(), 'Third'));
    const before = writeAircraft(document.current());
    goBack(bench, 'as it was', revision);
    expect(writeAircraft(document.current())).toBe(writeAircraft(revision));
    document.undo();
    expect(writeAircraft(document.current())).toBe(before);
    document.redo();
    expect(writeAircraft(document.current())).toBe(writeAircraft(revision));
  },
);
