import type { ParseArgsConfig } from 'node:util';
import type { Refusal } from '../../shared-core/result/result.ts';
import type { CommandHost } from './command-host.ts';

/** What a command answers: a JSON value and the same as text for a person; or a refusal; or that it was used wrongly. */
export type CommandAnswer =
  | { readonly kind: 'done'; readonly json: unknown; readonly text: string }
  | { readonly kind: 'refused'; readonly refusal: Refusal; readonly json?: unknown }
  | { readonly kind: 'wrong-use'; readonly why: string }
  /** Done, and everything there was to say has been said. */
  | { readonly kind: 'silent' };

/** What a command was given: its own options, the words after it, and how to reach the household. */
export interface CommandInput {
  readonly options: Readonly<Record<string, string | boolean | undefined>>;
  readonly words: readonly string[];
  readonly host: () => Promise<CommandHost>;
  /** What was typed for --on, for commands that need no household. */
  readonly on: string | undefined;
  readonly json: boolean;
}

/** A command of the terminal. */
export interface Command {
  readonly name: string;
  /** One line of what it does. */
  readonly does: string;
  /** How it is called, without the program's name. */
  readonly usage: readonly string[];
  readonly options?: ParseArgsConfig['options'];
  /** It only looks at a household: where none is started it is refused, and nothing is made. */
  readonly looks?: true;
  readonly run: (input: CommandInput) => Promise<CommandAnswer> | CommandAnswer;
}

/** A command's answer that was done. */
export function done(json: unknown, text: string): CommandAnswer {
  return { kind: 'done', json, text };
}

/** A command's answer that was refused. */
export function refused(refusal: Refusal): CommandAnswer {
  return { kind: 'refused', refusal };
}

/** A command used wrongly. */
export function wrongUse(why: string): CommandAnswer {
  return { kind: 'wrong-use', why };
}
