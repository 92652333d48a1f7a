import { readLicences } from './licenceList';

// Lists every package that the page is built from, with its licence: npm run licences. Exit code 1 when one is not known.
const found = readLicences();
const width = Math.max(...found.map(({ name, version }) => name.length + version.length + 1));
for (const { name, version, licence, where, fault } of found) {
  console.log(`${`${name} ${version}`.padEnd(width)}  ${licence.padEnd(12)}  ${fault ?? where}`);
}
const faults = found.filter(({ fault }) => fault !== null);
console.log(
  faults.length === 0
    ? `${found.length} packages, every one under a permissive licence.`
    : `${faults.length} of ${found.length} packages have no licence that is known to be permissive.`,
);
process.exitCode = faults.length === 0 ? 0 : 1;
