import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';

const namesOnPath = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'microsoft-edge-stable',
];

const macApps = ['Google Chrome', 'Chromium', 'Microsoft Edge'];

const windowsPrograms = [
  'Google\\Chrome\\Application\\chrome.exe',
  'Chromium\\Application\\chrome.exe',
  'Microsoft\\Edge\\Application\\msedge.exe',
];

/**
 * Where a Chrome, Chromium or Edge might be on this platform, best first.
 * @param {NodeJS.Platform} platform
 * @param {Record<string, string | undefined>} env
 * @returns {string[]}
 */
export function browserCandidates(platform, env) {
  if (env.CHROME_PATH) return [env.CHROME_PATH];
  if (platform === 'win32') {
    const roots = [env.PROGRAMFILES, env['PROGRAMFILES(X86)'], env.LOCALAPPDATA];
    return roots.flatMap((root) => (root ? windowsPrograms.map((program) => `${root}\\${program}`) : []));
  }
  const onPath = (env.PATH ?? '')
    .split(delimiter)
    .filter((folder) => folder !== '')
    .flatMap((folder) => namesOnPath.map((name) => join(folder, name)));
  if (platform !== 'darwin') return [...onPath, '/snap/bin/chromium'];
  const folders = ['/Applications', `${env.HOME ?? ''}/Applications`];
  return [
    ...folders.flatMap((folder) => macApps.map((app) => `${folder}/${app}.app/Contents/MacOS/${app}`)),
    ...onPath,
  ];
}

/** The path of an installed browser that starts, or null. CHROME_PATH in the environment wins. */
export function findBrowser() {
  return browserCandidates(process.platform, process.env).find(starts) ?? null;
}

/** A file may be there and still be a placeholder for a package that is not; on Linux it is asked. */
function starts(/** @type {string} */ path) {
  if (!existsSync(path)) return false;
  if (process.platform !== 'linux') return true;
  return spawnSync(path, ['--version'], { stdio: 'ignore', timeout: 30_000 }).status === 0;
}

/**
 * The path of a browser for the tests. As root on Debian or Ubuntu the distribution's package is
 * installed when there is none. Throws an Error that says what to install when there is no way.
 */
export function ensureBrowser() {
  const found = findBrowser();
  if (found) return found;
  if (process.env.CHROME_PATH) {
    throw new Error(`CHROME_PATH is ${process.env.CHROME_PATH}, but no browser starts from there.`);
  }
  if (isDebian() && process.getuid?.() === 0) {
    console.error('Installing the distribution’s chromium for the browser tests …');
    apt('update');
    apt('install', '-y', 'chromium');
    const installed = findBrowser();
    if (installed) return installed;
  }
  throw new Error(
    'The browser tests need Google Chrome, Chromium or Microsoft Edge. Install one of them ' +
      '(Debian or Ubuntu: sudo apt-get install chromium) or set CHROME_PATH to its program file.',
  );
}

function isDebian() {
  try {
    return /^ID(_LIKE)?=.*\b(debian|ubuntu)\b/m.test(readFileSync('/etc/os-release', 'utf8'));
  } catch {
    return false;
  }
}

function apt(/** @type {string[]} */ ...args) {
  spawnSync('apt-get', ['-qq', ...args], {
    stdio: ['ignore', process.stderr, process.stderr],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
}
