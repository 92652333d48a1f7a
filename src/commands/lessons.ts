import { lessonsCommand } from './lessonsCommand';

// npm run lessons -- FILE…: says what is wrong with lessons, or what the engine answers to them.
const { status, out, err } = lessonsCommand(process.argv.slice(2));
process.stdout.write(out);
process.stderr.write(err);
process.exitCode = status;
