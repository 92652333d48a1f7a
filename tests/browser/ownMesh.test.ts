import { afterAll, beforeAll, expect, test } from 'vitest';
import { brick } from '../engine/mesh/solids';
import { type Bench, expectClean, openBench } from './harness';

let bench: Bench;
beforeAll(async () => {
  bench = await openBench({ width: 1280, height: 800, plainFiles: true });
});
afterAll(() => bench.close());

/** A block of 900 × 120 × 100 mm as a text of faces; with `gap` one triangle of it is missing. */
function objOf(gap: boolean): Buffer {
  const { verticesMm, triangles } = brick([0, 0, 0], [900, 120, 100]);
  const faces = triangles.slice(gap ? 1 : 0).map((t) => `f ${t.map((i) => i + 1).join(' ')}`);
  return Buffer.from([...verticesMm.map((v) => `v ${v.join(' ')}`), ...faces].join('\n'));
}

async function choose(name: string, buffer: Buffer): Promise<void> {
  const { page } = bench;
  await page.getByTestId('manifest').getByRole('button', { name: 'Add', exact: true }).click();
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: /From a mesh file/ }).click();
  await (await chooser).setFiles({ name, mimeType: 'model/obj', buffer });
  await page.waitForFunction(() => window.counterpoise.mesh.get()?.reading === false);
}

test('a mesh with a hole is refused; a closed one in the right unit goes aboard as a hull, in one step', async () => {
  const { page } = bench;
  const card = page.getByTestId('mesh-card');
  await choose('open.obj', objOf(true));
  await expect.poll(() => card.getByRole('alert').textContent()).toContain('a hole, 3 edges');
  expect(await card.getByRole('button', { name: 'Put it aboard' }).count()).toBe(0);
  await card.getByRole('button', { name: 'Leave it' }).click();

  await choose('fuselage_v2.obj', objOf(false));
  await card.getByLabel('Drawn in').selectOption('in');
  await expect.poll(() => card.getByText(/22860/).count()).toBeGreaterThan(0);
  await card.getByLabel('Drawn in').selectOption('mm');
  await expect.poll(() => card.locator('.mesh-facts').textContent()).toContain('900');
  const before = await page.evaluate(() => JSON.stringify(window.counterpoise.document.current()));
  await card.getByRole('button', { name: 'Put it aboard' }).click();
  const hull = await page.evaluate(() => {
    const { document, view } = window.counterpoise;
    return document.current().structure.find(({ id }) => id === view.getState().selectedId);
  });
  expect(hull).toMatchObject({ kind: 'fuselage', name: 'fuselage v2', mesh: { shape: { kind: 'mesh' } } });
  await page.getByTestId('card').getByText('a mesh of 12 triangles').waitFor();
  await page.evaluate(() => window.counterpoise.document.undo());
  expect(await page.evaluate(() => JSON.stringify(window.counterpoise.document.current()))).toBe(before);
  expectClean(bench);
});
