import type { z } from 'zod';
import type { LocalDate } from '../calendar/local-date.ts';
import type { Result } from '../result/result.ts';
import type { NewEntry } from './entry-kind.ts';
import type { Facts } from './facts.ts';

/** What an operation may know of the world, given by the host. */
export interface Moment {
  /** The user's date. */
  readonly today: LocalDate;
  /** The present instant in UTC, as the journal writes it: "2026-11-25T09:30:00.000Z". */
  readonly now: string;
  /** A new id, never used before. */
  readonly newId: () => string;
}

/** An operation that reads: pure, from facts to a reply. */
export interface Ask<Request extends z.ZodType = z.ZodType, Reply extends z.ZodType = z.ZodType> {
  readonly kind: 'ask';
  readonly request: Request;
  readonly reply: Reply;
  readonly answer: (facts: Facts, request: z.output<Request>, moment: Moment) => Result<z.output<Reply>>;
}

/** What a change comes to: the entries to write, all or none, and the reply. */
export interface Decision<Reply> {
  readonly entries: readonly NewEntry[];
  readonly reply: Reply;
}

/** An operation that changes: it decides on the entries, the store writes entries and state in one transaction. */
export interface Do<Request extends z.ZodType = z.ZodType, Reply extends z.ZodType = z.ZodType> {
  readonly kind: 'do';
  readonly request: Request;
  readonly reply: Reply;
  readonly decide: (facts: Facts, request: z.output<Request>, moment: Moment) => Result<Decision<z.output<Reply>>>;
}

/** An operation that the host itself serves, for it needs disk, solver or signer; a `long` one may take a while. */
export interface HostServed<Request extends z.ZodType = z.ZodType, Reply extends z.ZodType = z.ZodType> {
  readonly kind: 'ask' | 'do' | 'long';
  readonly request: Request;
  readonly reply: Reply;
  readonly host: true;
}

/** Declares an operation that reads, so that its types are inferred from the schemas. */
export function ask<Request extends z.ZodType, Reply extends z.ZodType>(operation: Omit<Ask<Request, Reply>, 'kind'>): Ask<Request, Reply> {
  return { kind: 'ask', ...operation };
}

/** Declares an operation that changes. */
export function change<Request extends z.ZodType, Reply extends z.ZodType>(operation: Omit<Do<Request, Reply>, 'kind'>): Do<Request, Reply> {
  return { kind: 'do', ...operation };
}

/** Declares an operation that the host serves. */
export function served<Kind extends 'ask' | 'do' | 'long', Request extends z.ZodType, Reply extends z.ZodType>(kind: Kind, request: Request, reply: Reply): HostServed<Request, Reply> & { readonly kind: Kind } {
  return { kind, request, reply, host: true };
}
