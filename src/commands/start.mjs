import { spawn } from 'node:child_process';
import { createServer } from 'node:net';
import { buildBench } from './build.mjs';
import { ensureInstalled } from './install.mjs';
import { inProject } from './paths.mjs';

const firstPort = 4173;

/** The first port from `port` on that nobody on this machine listens to, on either loopback address. */
async function freePort(/** @type {number} */ port) {
  for (let candidate = port; candidate < port + 200; candidate++) {
    if ((await isFree(candidate, '127.0.0.1')) && (await isFree(candidate, '::1'))) return candidate;
  }
  throw new Error(`No free port between ${port} and ${port + 199}.`);
}

function isFree(/** @type {number} */ port, /** @type {string} */ host) {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once('error', (/** @type {NodeJS.ErrnoException} */ error) => resolve(error.code !== 'EADDRINUSE'));
    probe.listen({ port, host }, () => probe.close(() => resolve(true)));
  });
}

/** Opens the address in the default browser where there is one to open; the bench runs on if that fails. */
function openBrowser(/** @type {string} */ address) {
  const { platform, env } = process;
  const hasScreen = platform === 'win32' || platform === 'darwin' || env.DISPLAY || env.WAYLAND_DISPLAY;
  if (env.CI || !hasScreen) return;
  const [program, ...args] =
    platform === 'win32' ? ['cmd', '/c', 'start', ''] : platform === 'darwin' ? ['open'] : ['xdg-open'];
  spawn(program ?? '', [...args, address], { stdio: 'ignore', detached: true })
    .on('error', () => {})
    .unref();
}

ensureInstalled();
if (!buildBench()) process.exit(1);
const { preview } = await import('vite');
const server = await preview({
  configFile: inProject('vite.config.ts'),
  logLevel: 'warn',
  preview: { host: '127.0.0.1', port: await freePort(firstPort), strictPort: false },
});
const bound = server.httpServer.address();
const address = `http://localhost:${typeof bound === 'object' && bound ? bound.port : firstPort}/`;
console.log(`Counterpoise is on the bench at ${address}`);
console.log('Press Ctrl-C to stop.');
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.once(signal, () => process.exit(0));
if (!process.argv.includes('--no-open')) openBrowser(address);
