import type { IncomingMessage, ServerResponse } from 'node:http';
import { COMMON_HEADERS, NOTHING_POLICY } from './page-policy.ts';

/** A client that does not take its answer for this long is dropped, in milliseconds. */
const SLOWEST_READER_MS = 30_000;
/** For an answer to arrive while the rest of an unread request still comes in, in milliseconds. */
const LAST_WORDS_MS = 1_000;

/** Sends a whole answer; headers given here stand over the common ones. */
export function give(response: ServerResponse, status: number, headers: Readonly<Record<string, string>>, body: string | Uint8Array): void {
  const unread = hasBody(response.req) && !response.req.complete;
  // A request that was not read to its end cannot be followed by another on the same connection.
  if (unread) response.setHeader('connection', 'close');
  const length = { 'content-length': String(Buffer.byteLength(body)) };
  response.setTimeout(SLOWEST_READER_MS, () => response.destroy());
  response.writeHead(status, { ...COMMON_HEADERS, 'content-security-policy': NOTHING_POLICY, ...headers, ...length }).end(body);
  if (unread) hangUpSoon(response.req);
}

/** Sends one sentence for a person. */
export function say(response: ServerResponse, status: number, sentence: string): void {
  give(response, status, { 'content-type': 'text/plain; charset=utf-8' }, `${sentence}\n`);
}

/** A request without a body is over with its head, though the parser says so only later. */
function hasBody({ headers }: IncomingMessage): boolean {
  return headers['transfer-encoding'] !== undefined || Number(headers['content-length'] ?? 0) > 0;
}

function hangUpSoon(request: IncomingMessage): void {
  request.resume();
  setTimeout(() => request.destroy(), LAST_WORDS_MS).unref();
}
