import { runCommandLine } from './run-command-line.ts';

// Whoever reads may stop reading ("| head"): what is left to say is then said to nobody, and that is no fault.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
}

process.exitCode = await runCommandLine(process.argv.slice(2), {
  out: (text) => void process.stdout.write(text),
  say: (text) => void process.stderr.write(text),
});
