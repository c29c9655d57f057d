import { commands } from './all-commands.ts';
import type { Command } from './command.ts';

const GLOBAL_LINES = [
  '  --household DIR   the data folder (default: the program\'s own)',
  '  --sample          a throw-away copy of the sample household',
  '  --on DATE         take DATE (YYYY-MM-DD) as today',
  '  --json            one JSON value on standard output, nothing else',
];

/** What can be called, a line each. */
export function helpOfAll(): string {
  const widest = Math.max(...commands.map((one) => one.name.length));
  const lines = commands.map((one) => `  ${one.name.padEnd(widest + 2)}${one.does}`);
  return ['trunnion COMMAND [options]', '', ...lines, '', 'Every command takes:', ...GLOBAL_LINES, '  --help            how the command is called', ''].join('\n');
}

/** How one command is called; what is said of its options and files stands below, without the program's name. */
export function helpOfOne(command: Command): string {
  const usage = command.usage.map((line) => (line.startsWith(`${command.name} `) || line === command.name ? `  trunnion ${line}` : `  ${line}`.trimEnd()));
  return [command.does, '', ...usage, '', ...GLOBAL_LINES, ''].join('\n');
}
