import { fileURLToPath } from 'node:url';

/** The project's top folder, whatever folder the command was called from. */
export const projectRoot = fileURLToPath(new URL('../../', import.meta.url));

/** A path inside the project, from its parts. */
export const inProject = (/** @type {string[]} */ ...parts) => `${projectRoot}${parts.join('/')}`;
