import { shortened } from '../model/reading/fault';
import { Refused } from './balanceWish';
import { fileBytes } from './fileBytes';

const whyUnread: ReadonlyMap<string | undefined, string> = new Map([
  ['ENOENT', 'there is no such file'],
  ['ENOTDIR', 'there is no such file'],
  ['EISDIR', 'it is a folder'],
  ['EACCES', 'it may not be read'],
  ['EPERM', 'it may not be read'],
  ['ELOOP', 'its links lead round in a circle'],
  ['ENAMETOOLONG', 'its name is too long'],
  ['ERR_INVALID_ARG_VALUE', 'it is no name of a file'],
]);

/** The bytes of a file that a command was given; throws `Refused` with why it cannot be read. */
export function bytesOf(path: string): Uint8Array {
  try {
    return fileBytes(path);
  } catch (error) {
    const why = whyUnread.get((error as NodeJS.ErrnoException).code) ?? reasonOf(error);
    throw new Refused(`Cannot read ${shortened(path)}: ${why}.`);
  }
}

/** Why something failed, to be put into a sentence. */
export const reasonOf = (error: unknown): string =>
  shortened(error instanceof Error ? error.message : String(error)).replace(/\.$/, '');
