import { readdirSync, readFileSync } from 'node:fs';
import { isLicenceFile, judgeLicence, shippedPackages } from './licenceTexts.mjs';
import { inProject } from './paths.mjs';

export interface PackageLicence {
  readonly name: string;
  readonly version: string;
  /** As in the list of the Software Package Data Exchange. */
  readonly licence: string;
  /** The file that holds its text, or that the package states it without one. */
  readonly where: string;
  /** Why it cannot be shipped, in a sentence's words; null when it can. */
  readonly fault: string | null;
}

/** Every package that the page is built from, with its licence, by name. */
export function readLicences(): PackageLicence[] {
  const lock = JSON.parse(readFileSync(inProject('package-lock.json'), 'utf8'));
  return shippedPackages(lock)
    .map(({ folder, name, version }) => {
      const file = readdirSync(inProject(folder)).find(isLicenceFile);
      const text = file === undefined ? null : readFileSync(inProject(folder, file), 'utf8');
      const { license } = JSON.parse(readFileSync(inProject(folder, 'package.json'), 'utf8'));
      const stated = typeof license === 'string' ? license : undefined;
      const { licence, fault } = judgeLicence({ stated, text });
      const where = file === undefined ? 'stated in its package.json; it ships no text' : `${folder}/${file}`;
      return { name, version, licence, where, fault };
    })
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}
