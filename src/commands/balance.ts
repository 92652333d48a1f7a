import { balanceCommand } from './balanceCommand';

// npm run --silent balance -- FILE [options]; see balanceCommand.ts.
const { status, out, err } = balanceCommand(process.argv.slice(2));
if (out !== '') process.stdout.write(out);
if (err !== '') process.stderr.write(err);
process.exitCode = status;
