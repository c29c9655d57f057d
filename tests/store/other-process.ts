import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { onTestFinished } from 'vitest';

/** A process of its own that runs a module's text; it is ended with the test. */
export interface OtherProcess {
  /** Waits for its next line. */
  line(): Promise<string>;
  say(text: string): void;
  /** Closes its input and waits for its end. */
  end(): Promise<void>;
}

/** The address of a module of the program, as the text of a literal. */
export function moduleOf(path: string): string {
  return JSON.stringify(new URL(`../../${path}`, import.meta.url).href);
}

/** Starts a process on the text of a module. */
export function startProcess(script: string, ...args: string[]): OtherProcess {
  const child = spawn(process.execPath, ['--input-type=module', '-e', script, ...args], { stdio: ['pipe', 'pipe', 'inherit'] });
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  const exited = once(child, 'exit');
  onTestFinished(() => void child.kill('SIGKILL'));
  return {
    line: async () => {
      const next = await lines.next();
      if (next.done === true) throw new Error('the other process ended');
      return next.value;
    },
    say: (text) => void child.stdin.write(text),
    end: async () => {
      child.stdin.end();
      await exited;
    },
  };
}
