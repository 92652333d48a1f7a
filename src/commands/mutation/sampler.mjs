import { createHash } from 'node:crypto';

/** @typedef {{ readonly id: string, readonly fileName: string, readonly mutatorName: string, readonly replacement: string, readonly location: unknown }} Mutant */

const { MUTATE_SEED: seed = '1', MUTATE_SHARE: share = '1' } = process.env;

/** A number from 0 up to 1 that is the same for the same change in the same file with the same seed. */
function lot(/** @type {Mutant} */ { fileName, mutatorName, replacement, location }) {
  const file = fileName.replace(/^.*\/(?=src\/)/, '');
  const words = JSON.stringify([seed, file, mutatorName, replacement, location]);
  return createHash('sha256').update(words).digest().readUInt32BE(0) / 2 ** 32;
}

/** Lets only a sample of the mutants through to the tests; the others count as invalid, so not in the score. */
class Sampler {
  async init() {}

  async check(/** @type {readonly Mutant[]} */ mutants) {
    return Object.fromEntries(
      mutants.map((mutant) => [
        mutant.id,
        lot(mutant) < Number(share)
          ? { status: 'passed' }
          : { status: 'compileError', reason: 'not in the sample' },
      ]),
    );
  }

  async group(/** @type {readonly Mutant[]} */ mutants) {
    return [mutants.map(({ id }) => id)];
  }
}

export const strykerPlugins = [{ kind: 'Checker', name: 'sampler', injectableClass: Sampler }];
