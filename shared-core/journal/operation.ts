import type { z } from 'zod';
import type { LocalDate } from '../calendar/local-date.ts';
import type { Result } from '../result/result.ts';
import type { NewEntry } from './entry-kind.ts';
import type { Facts } from './facts.ts';

/** What an operation may know of the world, given by the host. */
export interface Moment {
  /** The user's date. */
  readonly today: LocalDate;
  /** A new id, never used before. */
  readonly newId: () => string;
}

/** An operation that reads: pure, from facts to a reply. */
export interface Ask<Request, Reply> {
  readonly kind: 'ask';
  readonly request: z.ZodType<Request>;
  readonly reply: z.ZodType<Reply>;
  readonly answer: (facts: Facts, request: Request, moment: Moment) => Result<Reply>;
}

/** What a change comes to: the entries to write, all or none, and the reply. */
export interface Decision<Reply> {
  readonly entries: readonly NewEntry[];
  readonly reply: Reply;
}

/** An operation that changes: it decides on the entries, the store writes entries and state in one transaction. */
export interface Do<Request, Reply> {
  readonly kind: 'do';
  readonly request: z.ZodType<Request>;
  readonly reply: z.ZodType<Reply>;
  readonly decide: (facts: Facts, request: Request, moment: Moment) => Result<Decision<Reply>>;
}

/** An operation that the host itself serves, for it needs disk, solver or signer; `long` ones run as jobs. */
export interface HostServed<Request, Reply> {
  readonly kind: 'ask' | 'do' | 'long';
  readonly request: z.ZodType<Request>;
  readonly reply: z.ZodType<Reply>;
  readonly host: true;
}

/** Declares an operation that reads, so that request and reply types are inferred from the schemas. */
export function ask<Request, Reply>(operation: Omit<Ask<Request, Reply>, 'kind'>): Ask<Request, Reply> {
  return { kind: 'ask', ...operation };
}

/** Declares an operation that changes. */
export function change<Request, Reply>(operation: Omit<Do<Request, Reply>, 'kind'>): Do<Request, Reply> {
  return { kind: 'do', ...operation };
}

/** Declares an operation that the host serves. */
export function served<Request, Reply>(kind: 'ask' | 'do' | 'long', request: z.ZodType<Request>, reply: z.ZodType<Reply>): HostServed<Request, Reply> {
  return { kind, request, reply, host: true };
}
