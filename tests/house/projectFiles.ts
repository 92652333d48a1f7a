import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { inProject, projectRoot } from '../../src/commands/paths.mjs';

const neverOurs = /^(node_modules|\.dist|\.cache|\.git)(\/|$)/;

/**
 * Paths of the project's own files, from its folder: what git tracks or would track. Without git (an
 * unpacked archive) everything but what is installed or built.
 */
export function projectFiles(): string[] {
  const git = spawnSync('git', ['ls-files', '-z', '--cached', '--others', '--exclude-standard'], {
    cwd: projectRoot,
    encoding: 'utf8',
  });
  const paths = git.status === 0 && git.stdout !== '' ? git.stdout.split('\0') : pathsOnDisk();
  return [...new Set(paths)].filter((path) => !neverOurs.test(path) && isFile(path));
}

function pathsOnDisk(): string[] {
  return readdirSync(projectRoot)
    .filter((name) => !neverOurs.test(name))
    .flatMap((name) =>
      isFile(name)
        ? [name]
        : readdirSync(inProject(name), { recursive: true, encoding: 'utf8' }).map(
            (inside) => `${name}/${inside.replaceAll('\\', '/')}`,
          ),
    );
}

function isFile(path: string): boolean {
  return path !== '' && (statSync(inProject(path), { throwIfNoEntry: false })?.isFile() ?? false);
}

/** Text by path of those of the project's files that are asked for. */
export function readProjectFiles(wanted: (path: string) => boolean): Map<string, string> {
  return new Map(
    projectFiles()
      .filter(wanted)
      .map((path) => [path, readFileSync(inProject(path), 'utf8')]),
  );
}
