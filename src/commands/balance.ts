import { balanceCommand } from './balanceCommand';

// npm run --silent balance -- FILE [options]; see balanceCommand.ts.
// A reader that has seen enough, such as head, closes the pipe; that is no fault.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
}
const { status, out, err } = balanceCommand(process.argv.slice(2));
if (out !== '') process.stdout.write(out);
if (err !== '') process.stderr.write(err);
process.exitCode = status;
