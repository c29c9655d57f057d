import { runCommandLine } from './run-command-line.ts';

process.exitCode = await runCommandLine(process.argv.slice(2), {
  out: (text) => void process.stdout.write(text),
  say: (text) => void process.stderr.write(text),
});
