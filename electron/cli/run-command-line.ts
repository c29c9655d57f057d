import { parseArgs, type ParseArgsConfig } from 'node:util';
import { hasWords, sayRefusal } from '../../shared-core/result/words/say.ts';
import { assert } from '../../shared-core/result/assert.ts';
import type { Refusal } from '../../shared-core/result/result.ts';
import { failure } from '../host/failure.ts';
import { commands } from './all-commands.ts';
import type { Command, CommandAnswer } from './command.ts';
import { openCommandHost, type CommandHost } from './command-host.ts';
import { helpOfAll, helpOfOne } from './help-text.ts';

/** Where a command writes: `out` is standard output, `say` is for messages to the person. */
export interface Terminal {
  readonly out: (text: string) => void;
  readonly say: (text: string) => void;
}

const GLOBAL = {
  household: { type: 'string' },
  sample: { type: 'boolean' },
  on: { type: 'string' },
  json: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
} as const satisfies ParseArgsConfig['options'];

/** A refusal on its way out of opening the household. */
class Refused extends Error {
  readonly refusal: Refusal;
  constructor(refusal: Refusal) {
    super(refusal.code);
    this.refusal = refusal;
  }
}

/** Runs one command line; answers the exit status: 0 done, 1 refused, 2 wrong use. */
export async function runCommandLine(words: readonly string[], terminal: Terminal): Promise<number> {
  const [name] = words;
  if (name === undefined || name === '--help' || name === '-h' || name === 'help') {
    const asked = name === 'help' ? commands.find((one) => one.name === words[1]) : undefined;
    (name === undefined ? terminal.say : terminal.out)(asked === undefined ? helpOfAll() : helpOfOne(asked));
    return name === undefined ? 2 : 0;
  }
  const command = commands.find((one) => one.name === name);
  if (command === undefined) return wrong(terminal, `There is no command "${name}".`);
  const parsed = parseWords(command, words.slice(1));
  if ('why' in parsed) return wrong(terminal, `${parsed.why}\n${helpOfOne(command)}`);
  if (parsed.options['help'] === true) {
    terminal.out(helpOfOne(command));
    return 0;
  }
  return runCommand(command, parsed, terminal);
}

interface ParsedWords {
  readonly options: Record<string, string | boolean | undefined>;
  readonly words: readonly string[];
}

/** A number below 0 that is a word of its own: the parser would take it for an option. */
function isNegative(args: readonly string[], at: number): boolean {
  return /^-\d/.test(args[at] ?? '') && !(args[at - 1] ?? '').startsWith('--');
}

function parseWords(command: Command, args: readonly string[]): ParsedWords | { readonly why: string } {
  try {
    const { values, positionals } = parseArgs({ args: args.filter((_word, at) => !isNegative(args, at)), options: { ...GLOBAL, ...command.options }, allowPositionals: true, strict: true, allowNegative: false });
    const empty = Object.keys(values).find((key) => values[key as keyof typeof values] === '');
    if (empty !== undefined) return { why: `Option '--${empty}' is empty` };
    if (values.sample === true && values.household !== undefined) return { why: "Options '--sample' and '--household' exclude each other" };
    return { options: values as Record<string, string | boolean | undefined>, words: [...positionals, ...args.filter((_word, at) => isNegative(args, at))] };
  } catch (error) {
    return { why: error instanceof Error ? error.message.split('. ')[0] ?? error.message : String(error) };
  }
}

async function runCommand(command: Command, parsed: ParsedWords, terminal: Terminal): Promise<number> {
  const { options } = parsed;
  let open: CommandHost | null = null;
  const text = (key: string) => (typeof options[key] === 'string' ? options[key] : undefined);
  const host = async () => {
    if (open !== null) return open;
    const opened = await openCommandHost({ household: text('household'), sample: options['sample'] === true, on: text('on'), looks: command.looks === true });
    if (!opened.ok) throw new Refused(opened.refusal);
    open = opened.value;
    return open;
  };
  const json = options['json'] === true;
  try {
    const answer = await command.run({ options, words: parsed.words, host, on: text('on'), json });
    return report(command, answer, json, terminal);
  } catch (error) {
    const refusal = error instanceof Refused ? error.refusal : unforeseen(error, command.name);
    return report(command, { kind: 'refused', refusal }, json, terminal);
  } finally {
    await (open as CommandHost | null)?.close();
  }
}

/** Our own bug, or a fault of the disk that nothing else has caught: it is said like any refusal, never as a program broken off. */
function unforeseen(error: unknown, command: string): Refusal {
  const failed = failure(error, command, '');
  assert(!failed.ok, 'a failure is a refusal');
  return failed.refusal;
}

function report(command: Command, answer: CommandAnswer, json: boolean, terminal: Terminal): number {
  if (answer.kind === 'wrong-use') return wrong(terminal, `${answer.why}\n${helpOfOne(command)}`);
  if (answer.kind === 'silent') return 0;
  if (answer.kind === 'refused') {
    const { refusal } = answer;
    const sentence = hasWords(refusal.code) ? sayRefusal(refusal) : refusal.code;
    if (json) terminal.out(`${JSON.stringify(answer.json ?? { refused: { ...refusal, text: sentence } }, null, 2)}\n`);
    terminal.say(`${sentence} (${refusal.code})\n`);
    return 1;
  }
  terminal.out(json ? `${JSON.stringify(answer.json, null, 2)}\n` : answer.text.endsWith('\n') ? answer.text : `${answer.text}\n`);
  return 0;
}

function wrong(terminal: Terminal, why: string): number {
  terminal.say(`${why}\n"trunnion help" lists the commands.\n`);
  return 2;
}
