import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { answerOf, lessonAnswer } from '../../../src/model/lessons/answer';
import { checkBench } from '../../../src/model/lessons/bench';
import { differenceText, figureText } from '../../../src/model/lessons/figureText';
import { filled, lessonFillings, predictionFillings, readingFor } from '../../../src/model/lessons/fill';
import { compared, rightOptions } from '../../../src/model/lessons/outcome';
import { wayOf } from '../../../src/model/lessons/steps';
import type { Lesson } from '../../../src/model/lessons/types';
import { cautions } from '../../../src/model/words/cautions';
import { type Bench, expectClean, openBench } from '../harness';
import {
  benchNow,
  doByHand,
  lessons,
  marker,
  next,
  openLesson,
  playing,
  predict,
  room,
  title,
} from './lessonHand';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench({ width: 1280, height: 800, graphics: 'unpainted', reducedMotion: true });
  await bench.page.waitForSelector('.answer-headline');
});
afterAll(() => bench.close());

const axisAnswer = () => bench.page.getByTestId('lesson-answer').locator('.lesson-answer-value');

/** Answers the check, and gives what is said to it. */
async function answerCheck(lesson: Lesson, right: boolean): Promise<string> {
  const { page } = bench;
  const { question } = lesson.check;
  const answer = answerOf(checkBench(lesson), question)!;
  if (question.by === 'marker') {
    const { least, most } = question.axis;
    const far = answer.answer - least > most - answer.answer ? least : most;
    if (right) await predict(page, answer.answer, 'keys');
    else await marker(page).press(far === least ? 'Home' : 'End');
  } else {
    const [good = 0] = rightOptions(question, answer);
    await page
      .locator('.lesson-choices label')
      .nth(right ? good : good === 0 ? 1 : 0)
      .click();
  }
  await next(page).click();
  await page.locator('.lesson-home').waitFor();
  return (await title(page).textContent()) ?? '';
}

describe.each(lessons.map((lesson) => ({ name: lesson.title, lesson })))('$name', ({ lesson }) => {
  const reading = readingFor(lesson, 'metric');
  const fillings = lessonFillings(lesson, 'metric');
  const answer = lessonAnswer(lesson)!;
  const says = figureText(answer.answer, lesson.question, reading);

  test('done right, by mouse and keys', async () => {
    const { page } = bench;
    await openLesson(page, lesson);

    // Nothing tells the answer before it was predicted.
    await expect.poll(() => title(page).textContent()).toBe(filled(lesson.question.ask, fillings, reading));
    expect((await benchNow(page)).cgShown).toBe(false);
    expect(await room(page).getByTestId('lesson-answer').count()).toBe(0);
    const before = await page.locator('.lesson-stage').evaluate((stage) => stage.outerHTML);
    expect(before).not.toMatch(/CG at|neutral point at/);
    expect(await next(page).isDisabled()).toBe(true);
    // Nor does a key that would play the fuel away or look at it otherwise.
    const asItWas = await benchNow(page);
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    for (const key of ['Space', '2', 'Control+z', 'Control+y']) await page.keyboard.press(key);
    expect(await playing(page)).toBe(false);
    expect(await benchNow(page)).toEqual(asItWas);

    await predict(page, answer.answer);
    await next(page).click();
    const heeded = (await page.locator('.lesson-cautions').textContent()) ?? '';
    for (const { id, says: sentence } of cautions)
      expect(heeded.includes(sentence), id).toBe(lesson.cautions.includes(id));
    for (const [at, step] of lesson.experiment.entries()) {
      await expect.poll(() => title(page).textContent()).toBe(filled(step.do, fillings, reading));
      expect(await next(page).isDisabled()).toBe(true);
      for (const change of wayOf(lesson, step)) await doByHand(page, change);
      await expect
        .poll(() => page.locator('.lesson-hint').getAttribute('data-kind'), {
          message: `${lesson.id}, step ${at + 1}`,
        })
        .toBe('done');
      await next(page).click();
    }

    await expect.poll(() => axisAnswer().textContent()).toBe(says);
    await expect.poll(() => title(page).getAttribute('data-right')).toBe('true');
    await next(page).click();
    await page.getByTestId('sum').first().waitFor();
    await next(page).click();
    const said = await answerCheck(lesson, true);
    expect(said).toContain(lesson.check.right.split('{')[0]!.trim());
    expectClean(bench);
  });

  test('done wrong, and told so', async () => {
    const { page } = bench;
    await openLesson(page, lesson);
    await page.getByRole('button', { name: 'Start again' }).click();
    const { least, most } = lesson.question.axis;
    const far = answer.answer - least > most - answer.answer ? least : most;
    await marker(page).press(far === least ? 'Home' : 'End');
    await next(page).click();
    for (const step of lesson.experiment) {
      await expect.poll(() => title(page).textContent()).toBe(filled(step.do, fillings, reading));
      await page.getByRole('button', { name: 'Show me' }).click();
      await expect.poll(() => next(page).isEnabled()).toBe(true);
      await next(page).click();
    }
    const comparison = compared(far, answer, lesson.question.axis);
    expect(comparison).not.toBe('right');
    const all = { ...fillings, ...predictionFillings(lesson.question, far, answer, reading) };
    await expect.poll(() => title(page).textContent()).toBe(filled(lesson.outcome[comparison], all, reading));
    expect(await page.locator('.lesson-compared').textContent()).toContain(
      differenceText(far - answer.answer, lesson.question, 'metric'),
    );
    await next(page).click();
    await next(page).click();
    const said = await answerCheck(lesson, false);
    expect(said).toContain(lesson.check.wrong.split('{')[0]!.trim());
    expect(await title(page).getAttribute('data-right')).toBeNull();
    expectClean(bench);
  });
});
