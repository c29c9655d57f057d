import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { runCommandLine } from '../../electron/cli/run-command-line.ts';

/** What a command came to: its exit status, what stood on standard output, and what was said to the person. */
export interface Ran {
  readonly status: number;
  readonly out: string;
  readonly said: string;
}

/** Runs a command line within this process. */
export async function runCommand(...words: readonly string[]): Promise<Ran> {
  let [out, said] = ['', ''];
  const status = await runCommandLine(words, { out: (text) => (out += text), say: (text) => (said += text) });
  return { status, out, said };
}

/** The one JSON value on standard output; anything before or after it fails. */
export function jsonOf(ran: Ran): Record<string, unknown> {
  return JSON.parse(ran.out) as Record<string, unknown>;
}

const PROGRAM = fileURLToPath(new URL('../../electron/cli/trunnion.ts', import.meta.url));

/** Runs a command line in a process of its own; what is given is written to its standard input, piece by piece. */
export function runProcess(words: readonly string[], input: readonly string[] = [], options: { readonly nobodyReads?: boolean } = {}): Promise<Ran> {
  const child = spawn(process.execPath, [PROGRAM, ...words], { stdio: ['pipe', 'pipe', 'pipe'] });
  let [out, said] = ['', ''];
  child.stdout.setEncoding('utf8').on('data', (text: string) => (out += text));
  if (options.nobodyReads === true) child.stdout.destroy();
  child.stderr.setEncoding('utf8').on('data', (text: string) => (said += text));
  void feed(child.stdin, input);
  return new Promise((resolve) => child.on('close', (code) => resolve({ status: code ?? -1, out, said })));
}

async function feed(stdin: NodeJS.WritableStream, input: readonly string[]): Promise<void> {
  for (const piece of input) {
    stdin.write(piece);
    await new Promise((later) => setTimeout(later, 150));
  }
  stdin.end();
}
