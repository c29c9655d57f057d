import { randomBytes } from 'node:crypto';
import type { IncomingMessage } from 'node:http';
import type { Host } from '../../shared-core/contract/host.ts';
import { refuse, type Result } from '../../shared-core/result/result.ts';
import { readBody, type BodyLimits, type ReadBody } from './read-body.ts';

/** An operation's answer with the HTTP status that fits it. */
export interface OperationAnswer {
  readonly status: number;
  readonly result: Result<unknown>;
}

export interface OperationServer {
  readonly host: Host;
  readonly operations: ReadonlySet<string>;
  readonly limits: BodyLimits;
  /** Takes a note for the person who looks into a fault; never a token, a request or a reply. */
  readonly note: (line: string) => void;
}

/** The operation an address names, as written; null for any other address. */
export function operationInPath(urlPath: string): string | null {
  return /^\/operations\/([A-Za-z0-9.-]{1,80})$/.exec(urlPath)?.[1] ?? null;
}

/** Runs one operation for a request: JSON in, a Result as JSON out, whatever happens. */
export async function answerOperation(server: OperationServer, operation: string, request: IncomingMessage): Promise<OperationAnswer> {
  if (!server.operations.has(operation)) return { status: 404, result: refuse('unknown-operation', { operation }) };
  if (!isJson(request)) return { status: 415, result: refuse('request-not-json') };
  const body = await readBody(request, server.limits);
  if (!body.ok) return refusedBody(body.why);
  const given = parseJson(body.text);
  return given.ok ? run(server, operation, given.value) : { status: 400, result: given };
}

function isJson({ headers }: IncomingMessage): boolean {
  return /^application\/json(\s*;\s*charset=utf-8)?$/i.test(headers['content-type'] ?? '') && headers['content-encoding'] === undefined;
}

function parseJson(text: string): Result<unknown> {
  try {
    return { ok: true, value: JSON.parse(text) as unknown };
  } catch {
    return refuse('request-not-json');
  }
}

function refusedBody(why: Extract<ReadBody, { ok: false }>['why']): OperationAnswer {
  if (why === 'too-large') return { status: 413, result: refuse('request-too-large') };
  if (why === 'too-slow') return { status: 408, result: refuse('request-too-slow') };
  return { status: 400, result: refuse('request-not-json') };
}

async function run({ host, note }: OperationServer, operation: string, request: unknown): Promise<OperationAnswer> {
  try {
    const result = await host.call(operation, request);
    return { status: !result.ok && result.refusal.code === 'internal' ? 500 : 200, result };
  } catch (error) {
    const ref = randomBytes(4).toString('hex');
    note(`${ref} ${operation}: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`);
    return { status: 500, result: refuse('internal', { ref }) };
  }
}
