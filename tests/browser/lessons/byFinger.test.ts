import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { answerOf, lessonAnswer } from '../../../src/model/lessons/answer';
import { checkBench } from '../../../src/model/lessons/bench';
import { rightOptions } from '../../../src/model/lessons/outcome';
import { wayOf } from '../../../src/model/lessons/steps';
import { type Bench, expectClean, openBench } from '../harness';
import { doByFinger, predictByFinger } from './lessonFinger';
import { lessons, next, openLesson, title } from './lessonHand';

/** Against a hang, not on speed. */
const SLOW = 120_000;

let bench: Bench;
beforeAll(async () => {
  bench = await openBench({
    width: 820,
    height: 1180,
    touch: true,
    graphics: 'unpainted',
    reducedMotion: true,
  });
  await bench.page.waitForSelector('.answer-headline');
});
afterAll(() => bench.close());

/** One lesson for each thing that a finger does: along, across, a mass, an attitude. */
const BY_FINGER = ['see-saw', 'offset-camera', 'nose-grams', 'fuel-in-the-climb'];
const shown = BY_FINGER.map((wanted) => lessons.find(({ id }) => id === wanted)!);

describe.each(shown.map((lesson) => ({ name: lesson.title, lesson })))('$name', ({ lesson }) => {
  test('is done with a finger alone', { timeout: SLOW }, async () => {
    const { page } = bench;
    await openLesson(page, lesson);
    await predictByFinger(page, lessonAnswer(lesson)!.answer, lesson.question.axis.within);
    await next(page).tap();
    for (const step of lesson.experiment) {
      await expect.poll(() => page.locator('.lesson-hint').count()).toBe(1);
      for (const change of wayOf(lesson, step)) await doByFinger(page, change);
      await expect
        .poll(() => page.locator('.lesson-hint').getAttribute('data-kind'), {
          timeout: 10_000,
          message: `${lesson.id}: ${step.do}`,
        })
        .toBe('done');
      await next(page).tap();
    }
    await expect.poll(() => title(page).getAttribute('data-right')).toBe('true');
    await next(page).tap();
    await page.getByTestId('sum').first().waitFor();
    await next(page).tap();
    const { question } = lesson.check;
    const answer = answerOf(checkBench(lesson), question)!;
    if (question.by === 'marker') await predictByFinger(page, answer.answer, question.axis.within);
    else
      await page
        .locator('.lesson-choices label')
        .nth(rightOptions(question, answer)[0] ?? 0)
        .tap();
    await next(page).tap();
    await page.locator('.lesson-home').waitFor();
    expect(await title(page).textContent()).toContain(lesson.check.right.split('{')[0]!.trim());
    expectClean(bench);
  });
});
