/** @import { TestSequencer, TestSpecification } from 'vitest/node' */

/** The files that take longest, the longest first: one of them begun last leaves a core idle at the end. */
const slow = [
  'tests/demo/arranged',
  'tests/engine/place/arrange',
  'tests/demo/offers',
  'tests/demo/brokenDemos',
  'tests/model/place/grid',
  'tests/engine/place/setBound',
  'tests/model/stability/slides',
  'tests/fuzz/fuzz',
  'tests/browser/arrange',
  'tests/browser/screen',
  'tests/browser/lessons/eachLesson',
  'tests/browser/faults',
  'tests/browser/lessons/lessons',
  'tests/browser/empty',
  'tests/browser/bench',
  'tests/browser/steadyHand',
  'tests/browser/begin',
  'tests/browser/keeping',
  'tests/browser/fleet',
  'tests/browser/present',
];

const groupOf = (/** @type {TestSpecification} */ { project }) => project.config.sequence.groupOrder;

function rankOf(/** @type {TestSpecification} */ { moduleId }) {
  const rank = slow.findIndex((name) => moduleId.endsWith(`/${name}.test.ts`));
  return rank < 0 ? slow.length : rank;
}

/**
 * One kind of test after the other, and of each the slowest files first.
 * @implements {TestSequencer}
 */
export class SlowFirst {
  async shard(/** @type {TestSpecification[]} */ files) {
    return files;
  }

  async sort(/** @type {TestSpecification[]} */ files) {
    return files.toSorted((a, b) => groupOf(a) - groupOf(b) || rankOf(a) - rankOf(b));
  }
}
