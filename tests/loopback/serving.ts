import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { serveLoopback, type Loopback, type LoopbackOptions } from '../../electron/loopback/serve-loopback.ts';
import type { Host } from '../../shared-core/contract/host.ts';
import type { Push } from '../../shared-core/contract/push.ts';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import { rawRequest, type RawReply } from './raw-request.ts';

/** A host that answers what a test tells it to, and notes every call. */
export interface ScriptedHost extends Host {
  readonly calls: { operation: string; request: unknown }[];
  push(push: Push): void;
}

export function scriptedHost(answers: Readonly<Record<string, (request: unknown) => Promise<Result<unknown>> | Result<unknown>>> = {}): ScriptedHost {
  const listeners = new Set<(push: Push) => void>();
  const calls: ScriptedHost['calls'] = [];
  return {
    calls,
    async call(operation, request) {
      calls.push({ operation, request });
      return (await answers[operation]?.(request)) ?? refuse('unknown-operation', { operation });
    },
    onPush(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    push: (push) => listeners.forEach((listener) => listener(push)),
    close: () => Promise.resolve(),
  };
}

export const PAPER = 'a'.repeat(64);

/** A loopback server over a scripted host, with a small page in a folder that has a secret beside it. */
export interface Serving {
  readonly host: ScriptedHost;
  readonly loopback: Loopback;
  /** The cookie of a browser that was let in. */
  readonly cookie: string;
  readonly notes: string[];
  ask(line: string, headers?: readonly (readonly [string, string])[], body?: string): Promise<RawReply>;
  /** A POST as the page sends it. */
  post(operation: string, body: string, headers?: readonly (readonly [string, string])[]): Promise<RawReply>;
  end(): Promise<void>;
}

export async function startServing(options: Partial<LoopbackOptions> & { host?: ScriptedHost } = {}): Promise<Serving> {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'loopback-'));
  writePage(folder);
  const host = options.host ?? scriptedHost({ 'yard.show': (request) => ok({ request }), 'car.add': () => refuse('car-name-taken', { name: 'Pip' }) });
  const notes: string[] = [];
  const loopback = await serveLoopback({ operations: ['yard.show', 'car.add', 'breaks'], page: path.join(folder, 'page'), paper: findPaper, note: (line) => notes.push(line), ...options, host });
  const { port } = loopback;
  const cookie = await letIn(loopback);
  const own = [['Host', `127.0.0.1:${port}`], ['Cookie', cookie]] as const;
  return {
    host, loopback, cookie, notes,
    ask: (line, headers = [], body = '') => rawRequest(port, line, [...own, ...headers], body),
    post: (operation, body, headers = [['Content-Type', 'application/json']]) =>
      rawRequest(port, `POST /operations/${operation} HTTP/1.1`, [...own, ['Origin', `http://127.0.0.1:${port}`], ...headers], body),
    async end() {
      await loopback.close();
      rmSync(folder, { recursive: true });
    },
  };
}

/** Opens a fresh link as a browser does; the answer is the cookie it then sends. */
export async function letIn(loopback: Loopback): Promise<string> {
  const link = new URL(loopback.freshLink());
  const reply = await rawRequest(loopback.port, `GET ${link.pathname}${link.search} HTTP/1.1`, [['Host', link.host]]);
  return reply.headers['set-cookie']?.split(';')[0] ?? '';
}

function writePage(folder: string): void {
  mkdirSync(path.join(folder, 'page', 'assets'), { recursive: true });
  writeFileSync(path.join(folder, 'secret.json'), '{"secret":true}');
  writeFileSync(path.join(folder, 'page', 'index.html'), '<title>Trunnion</title><meta property="csp-nonce" nonce="__NONCE_OF_THIS_LOAD__">');
  writeFileSync(path.join(folder, 'page', 'assets', 'app.js'), 'export {};');
  writeFileSync(path.join(folder, 'page', 'assets', 'odd.exe'), 'MZ');
}

const findPaper: LoopbackOptions['paper'] = ({ sha256, part }) => Promise.resolve(sha256 === PAPER && part === 'whole' ? { bytes: Buffer.from('<script>1</script>'), mediaType: 'text/html' } : null);
