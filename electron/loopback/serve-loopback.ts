import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Host } from '../../shared-core/contract/host.ts';
import type { OperationServer } from './answer-operation.ts';
import { answerRequest, type Routes } from './answer-request.ts';
import { linkTokens } from './link-tokens.ts';
import { pageFiles } from './page-files.ts';
import { pageHost } from './page-host.ts';
import type { FindPaper } from './paper-answer.ts';
import { pushStreams, type PushStreams } from './push-streams.ts';

/** A paper of 25 MB is 33.4 MB as base64; with the rest of its request it stays under this. */
const MOST_BODY_BYTES = 36 * 1024 * 1024;

/** How long a client may keep the server waiting, in milliseconds. */
export interface Patience {
  readonly headersMs: number;
  readonly silenceMs: number;
  readonly heartbeatMs: number;
  /** For what is under way when the server stops. */
  readonly finishMs: number;
}
const PATIENCE: Patience = { headersMs: 10_000, silenceMs: 10_000, heartbeatMs: 15_000, finishMs: 10_000 };

export interface LoopbackOptions {
  readonly host: Host;
  /** The names of the contract's operations; no other is called. */
  readonly operations: readonly string[];
  readonly paper: FindPaper;
  /** The folder of the built page. */
  readonly page: string;
  /** Takes notes on faults of our own; standard error unless given. */
  readonly note?: (line: string) => void;
  readonly patience?: Partial<Patience>;
}

/** The dashboard on 127.0.0.1. */
export interface Loopback {
  readonly port: number;
  /** An address that lets one browser in, once. */
  freshLink(): string;
  /** Takes no more, lets what is under way finish, and ends. Calling it again waits for the same end. */
  close(): Promise<void>;
}

/**
 * Serves the page, the operations, the pushes and the papers on 127.0.0.1, at a port the system chooses, to a browser that opened a link
 * of `freshLink`. The host is not closed with it.
 *
 * @example const loopback = await serveLoopback({ host, operations, paper, page: 'dist/renderer' });
 */
export async function serveLoopback(options: LoopbackOptions): Promise<Loopback> {
  const patience = { ...PATIENCE, ...options.patience };
  const files = pageFiles(options.page);
  const server = createServer({ maxHeaderSize: 16_384, connectionsCheckingInterval: Math.min(patience.headersMs, 2_000) });
  Object.assign(server, { headersTimeout: patience.headersMs, requestTimeout: 120_000, keepAliveTimeout: 5_000, maxConnections: 200 });
  const port = await listen(server);
  const tokens = linkTokens(port);
  const pushes = pushStreams(options.host, patience.heartbeatMs);
  const routes: Routes = { port, tokens, files, pushes, paper: options.paper, operations: operationsOf(options, patience) };
  server.on('request', (request, response) => void answerRequest(routes, request, response).catch(() => response.destroy()));
  let closing: Promise<void> | null = null;
  return {
    port,
    freshLink: () => `http://127.0.0.1:${port}/enter?token=${tokens.issue()}`,
    close: () => (closing ??= stop(server, pushes, patience.finishMs)),
  };
}

function operationsOf({ host, operations, note = noteOnStandardError }: LoopbackOptions, { silenceMs }: Patience): OperationServer {
  return { host: pageHost(host), note, operations: new Set(operations), limits: { bytes: MOST_BODY_BYTES, silenceMs } };
}

function noteOnStandardError(line: string): void {
  process.stderr.write(`${line}\n`);
}

function listen(server: Server): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => resolve((server.address() as AddressInfo).port));
  });
}

async function stop(server: Server, pushes: PushStreams, finishMs: number): Promise<void> {
  const ended = new Promise<void>((resolve) => server.close(() => resolve()));
  pushes.close();
  // A connection that falls idle after its last answer would be kept open for another request that is not taken.
  const sweep = setInterval(() => server.closeIdleConnections(), 50);
  const atLast = setTimeout(() => server.closeAllConnections(), finishMs);
  await ended;
  clearInterval(sweep);
  clearTimeout(atLast);
}
