import http from 'node:http';
import net from 'node:net';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { ok } from '../../shared-core/result/result.ts';
import { rawBytes, rawRequest } from './raw-request.ts';
import { letIn, PAPER, scriptedHost, startServing, type Serving } from './serving.ts';

let serving: Serving;
beforeAll(async () => {
  serving = await startServing();
});
afterAll(() => serving.end());

describe('being let in', () => {
  test('a link lets one browser in, once', async () => {
    const link = new URL(serving.loopback.freshLink());
    expect(link.hostname).toBe('127.0.0.1');
    const open = () => rawRequest(serving.loopback.port, `GET ${link.pathname}${link.search} HTTP/1.1`, [['Host', link.host]]);
    const first = await open();
    expect(first).toMatchObject({ status: 303, headers: { location: '/' } });
    expect(first.headers['set-cookie']).toMatch(/^trunnion-\d+=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict$/);
    expect(await open()).toMatchObject({ status: 401 });
  });

  test.each(['', '?token=', '?token=wrong', `?token=${'a'.repeat(43)}`])('a guess%s is turned away without a cookie', async (query) => {
    const reply = await serving.ask(`GET /enter${query} HTTP/1.1`);
    expect(reply.status).toBe(401);
    expect(reply.headers['set-cookie']).toBeUndefined();
  });

  test('neither HEAD nor a browser that looks ahead uses a link up', async () => {
    const link = new URL(serving.loopback.freshLink());
    const target = `${link.pathname}${link.search} HTTP/1.1`;
    expect(await serving.ask(`HEAD ${target}`)).toMatchObject({ status: 405 });
    expect(await serving.ask(`GET ${target}`, [['Sec-Purpose', 'prefetch']])).toMatchObject({ status: 503 });
    expect(await serving.ask(`GET ${target}`)).toMatchObject({ status: 303 });
  });

  test.each(['/', '/assets/app.js', '/pushes', `/papers/${PAPER}`, '/nothing'])('%s is closed to a browser that was not', async (path) => {
    const host = ['Host', `127.0.0.1:${serving.loopback.port}`] as const;
    expect(await rawRequest(serving.loopback.port, `GET ${path} HTTP/1.1`, [host])).toMatchObject({ status: 401 });
    expect(await rawRequest(serving.loopback.port, `GET ${path} HTTP/1.1`, [host, ['Cookie', `${serving.cookie}x`]])).toMatchObject({ status: 401 });
  });

  test('a cookie of one server means nothing to the next', async () => {
    const other = await startServing();
    const value = serving.cookie.split('=')[1] ?? '';
    const reply = await rawRequest(other.loopback.port, 'GET / HTTP/1.1', [['Host', `127.0.0.1:${other.loopback.port}`], ['Cookie', `trunnion-${other.loopback.port}=${value}`]]);
    expect(reply.status).toBe(401);
    await other.end();
  });

  test('an operation is not run for a stranger', async () => {
    const before = serving.host.calls.length;
    const { port } = serving.loopback;
    const own = [['Host', `127.0.0.1:${port}`], ['Content-Type', 'application/json']] as const;
    expect(await rawRequest(port, 'POST /operations/yard.show HTTP/1.1', [...own, ['Origin', `http://127.0.0.1:${port}`]], '{}')).toMatchObject({ status: 401 });
    expect(await serving.post('yard.show', '{}', [['Content-Type', 'application/json'], ['Origin', 'http://evil.example']])).toMatchObject({ status: 403 });
    expect(await rawRequest(port, 'POST /operations/yard.show HTTP/1.1', [['Host', 'evil.example'], ['Cookie', serving.cookie]], '{}')).toMatchObject({ status: 421 });
    expect(serving.host.calls.length).toBe(before);
  });
});

describe('the request as it arrives', () => {
  test.each([
    { case: 'no Host', bytes: 'GET / HTTP/1.1\r\nConnection: close\r\n\r\n', status: 400 },
    { case: 'no Host, HTTP/1.0', bytes: 'GET / HTTP/1.0\r\n\r\n', status: 400 },
    { case: 'two Hosts', bytes: 'GET / HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nHost: evil.example\r\nConnection: close\r\n\r\n', status: 400 },
    { case: 'another server in the target', bytes: 'GET http://evil.example/ HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nConnection: close\r\n\r\n', status: 421 },
    { case: 'no HTTP at all', bytes: 'hello\r\n\r\n', status: 400 },
    { case: 'a header of 20 kB', bytes: `GET / HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nX: ${'x'.repeat(20_000)}\r\n\r\n`, status: 431 },
    { case: 'two lengths', bytes: 'POST /operations/yard.show HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nContent-Length: 2\r\nContent-Length: 3\r\n\r\n{}', status: 400 },
    { case: 'a length and chunks', bytes: 'POST /operations/yard.show HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nContent-Length: 2\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n', status: 400 },
  ])('$case: $status', async ({ bytes, status }) => {
    const { port } = serving.loopback;
    expect((await rawBytes(port, bytes.replaceAll('PORT', String(port)))).status).toBe(status);
  });
});

describe('operations', () => {
  test('a request reaches the host and its answer comes back', async () => {
    const reply = await serving.post('yard.show', '{"today":"2026-11-25"}');
    expect(reply).toMatchObject({ status: 200, headers: { 'content-type': 'application/json; charset=utf-8', 'cache-control': 'no-store', 'x-content-type-options': 'nosniff' } });
    expect(JSON.parse(reply.body)).toEqual({ ok: true, value: { request: { today: '2026-11-25' } } });
  });

  test('a refusal comes back as the value it is', async () => {
    const reply = await serving.post('car.add', '{}');
    expect(reply.status).toBe(200);
    expect(JSON.parse(reply.body)).toEqual({ ok: false, refusal: { code: 'car-name-taken', values: { name: 'Pip' } } });
  });

  const JSON_TYPE = [['Content-Type', 'application/json']] as const;
  test.each([
    { case: 'no such operation', operation: 'car.fly', body: '{}', headers: JSON_TYPE, status: 404, code: 'unknown-operation' },
    { case: 'a name every object has', operation: 'constructor', body: '{}', headers: JSON_TYPE, status: 404, code: 'unknown-operation' },
    { case: 'a way up', operation: '..%2fyard.show', body: '{}', headers: JSON_TYPE, status: 404, code: 'unknown-operation' },
    { case: 'no JSON', operation: 'yard.show', body: '{', headers: JSON_TYPE, status: 400, code: 'request-not-json' },
    { case: 'nothing', operation: 'yard.show', body: '', headers: JSON_TYPE, status: 400, code: 'request-not-json' },
    { case: 'a form', operation: 'yard.show', body: 'a=1', headers: [['Content-Type', 'application/x-www-form-urlencoded']] as const, status: 415, code: 'request-not-json' },
    { case: 'plain text', operation: 'yard.show', body: '{}', headers: [['Content-Type', 'text/plain']] as const, status: 415, code: 'request-not-json' },
    { case: 'no type', operation: 'yard.show', body: '{}', headers: [], status: 415, code: 'request-not-json' },
    { case: 'packed', operation: 'yard.show', body: '{}', headers: [...JSON_TYPE, ['Content-Encoding', 'gzip']] as const, status: 415, code: 'request-not-json' },
  ])('$case: $status $code', async ({ operation, body, headers, status, code }) => {
    const before = serving.host.calls.length;
    const reply = await serving.post(operation, body, headers);
    expect(reply.status).toBe(status);
    expect(JSON.parse(reply.body)).toMatchObject({ ok: false, refusal: { code } });
    expect(serving.host.calls.length).toBe(before);
  });

  test('bytes that are not UTF-8 are refused', async () => {
    const { port } = serving.loopback;
    const options = { port, method: 'POST', path: '/operations/yard.show', headers: { host: `127.0.0.1:${port}`, cookie: serving.cookie, origin: `http://127.0.0.1:${port}`, 'content-type': 'application/json' } };
    const status = await new Promise((resolve) => http.request(options, (reply) => resolve(reply.resume().statusCode)).end(Buffer.from([0x22, 0xff, 0x22])));
    expect(status).toBe(400);
  });

  test.each(['GET', 'PUT', 'DELETE', 'OPTIONS', 'HEAD'])('%s on an operation: 405', async (method) => {
    const origin = [['Origin', `http://127.0.0.1:${serving.loopback.port}`]] as const;
    const reply = await serving.ask(`${method} /operations/yard.show HTTP/1.1`, origin);
    expect(reply).toMatchObject({ status: 405, headers: { allow: 'POST' } });
    expect(Object.keys(reply.headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
  });

  test('a fault of our own shows a note number and no more', async () => {
    const broken = await startServing({ host: scriptedHost({ breaks: () => Promise.reject(new Error('a secret place')) }) });
    const reply = await broken.post('breaks', '{"salt":"do not log me"}');
    expect(reply.status).toBe(500);
    const { refusal } = JSON.parse(reply.body) as { refusal: { code: string; values: { ref: string } } };
    expect(refusal).toEqual({ code: 'internal', values: { ref: expect.stringMatching(/^[0-9a-f]{8}$/) as string } });
    expect(reply.body).not.toContain('secret');
    expect(broken.notes).toHaveLength(1);
    expect(broken.notes[0]).toContain(`${refusal.values.ref} breaks: Error: a secret place`);
    expect(broken.notes[0]).not.toContain('do not log me');
    await broken.end();
  });
});

describe('bodies', () => {
  const MOST = 36 * 1024 * 1024;

  test('a paper of 35 MB as base64 is taken', async () => {
    const body = JSON.stringify({ base64: 'A'.repeat(35_000_000) });
    expect((await serving.post('car.add', body)).status).toBe(200);
  });

  test('one that says it is larger is refused before it is read', async () => {
    const before = serving.host.calls.length;
    const { port } = serving.loopback;
    const head = `POST /operations/yard.show HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nCookie: ${serving.cookie}\r\nOrigin: http://127.0.0.1:${port}\r\nContent-Type: application/json\r\nContent-Length: ${MOST + 1}\r\n\r\n{`;
    const reply = await rawBytes(port, head);
    expect(reply).toMatchObject({ status: 413, headers: { connection: 'close' } });
    expect(JSON.parse(reply.body)).toMatchObject({ refusal: { code: 'request-too-large' } });
    expect(serving.host.calls.length).toBe(before);
  });

  test('one that grows larger without saying is cut off', async () => {
    const { port } = serving.loopback;
    const status = await new Promise<number | undefined>((resolve) => {
      const headers = { host: `127.0.0.1:${port}`, cookie: serving.cookie, origin: `http://127.0.0.1:${port}`, 'content-type': 'application/json', 'transfer-encoding': 'chunked' };
      const request = http.request({ port, method: 'POST', path: '/operations/yard.show', headers }, (reply) => resolve(reply.resume().statusCode));
      request.on('error', () => undefined);
      for (let sent = 0; sent <= MOST; sent += 1024 * 1024) request.write('a'.repeat(1024 * 1024));
      request.end();
    });
    expect(status).toBe(413);
  });
});

describe('slow clients', () => {
  let slow: Serving;
  beforeAll(async () => {
    slow = await startServing({ patience: { headersMs: 300, silenceMs: 200 } });
  });
  afterAll(() => slow.end());

  test('one that does not finish its headers is dropped', async () => {
    expect((await rawBytes(slow.loopback.port, 'GET / HTTP/1.1\r\nHost: 127')).status).toBe(408);
  });

  test('one that falls silent in its body is dropped', async () => {
    const { port } = slow.loopback;
    const head = `POST /operations/yard.show HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nCookie: ${slow.cookie}\r\nOrigin: http://127.0.0.1:${port}\r\nContent-Type: application/json\r\nContent-Length: 100\r\n\r\n{`;
    const started = performance.now();
    const reply = await rawBytes(port, head);
    expect(performance.now() - started).toBeLessThan(5_000);
    expect(reply.status).toBe(408);
    expect(JSON.parse(reply.body)).toMatchObject({ refusal: { code: 'request-too-slow' } });
    expect(slow.host.calls).toEqual([]);
  });
});

describe('the page', () => {
  test('has a strict policy and a nonce of its own at each load', async () => {
    const [first, second] = [await serving.ask('GET / HTTP/1.1'), await serving.ask('GET /car/pip HTTP/1.1')];
    const nonces = [first, second].map(({ body }) => /nonce="([\w-]+)"/.exec(body)?.[1]);
    expect(nonces[0]).toMatch(/^[\w-]{22}$/);
    expect(nonces[1]).not.toBe(nonces[0]);
    expect(first.headers['content-security-policy']).toBe(
      `default-src 'none'; script-src 'self'; style-src 'self' 'nonce-${nonces[0]}'; img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'`,
    );
    expect(first.headers).toMatchObject({ 'content-type': 'text/html; charset=utf-8', 'cache-control': 'no-store', 'x-content-type-options': 'nosniff', 'referrer-policy': 'no-referrer', 'cross-origin-resource-policy': 'same-origin' });
  });

  test('gives its own files by their kind', async () => {
    expect(await serving.ask('GET /assets/app.js HTTP/1.1')).toMatchObject({ status: 200, body: 'export {};', headers: { 'content-type': 'text/javascript; charset=utf-8' } });
    expect(await serving.ask('HEAD /assets/app.js HTTP/1.1')).toMatchObject({ status: 200, body: '', headers: { 'content-length': '10' } });
  });

  // Source: the forms of OWASP's page on path traversal (from memory).
  test.each([
    '/../secret.json', '/assets/../../secret.json', '/..%2fsecret.json', '/%2e%2e/secret.json', '/%2e%2e%2fsecret.json', '/..%5csecret.json', '/..\\secret.json',
    '/....//secret.json', '/%252e%252e%252fsecret.json', '/..%c0%afsecret.json', '//secret.json', '/assets/app.js%00.html', '/assets/odd.exe', '/assets/none.js', '/assets/', '/secret.json',
    '/index.html/../../secret.json', `/papers/${PAPER}/../../secret.json`, '/papers/..%2f..%2fsecret.json', `/papers/${PAPER.toUpperCase()}`, `/papers/${'b'.repeat(64)}`, '/papers/',
  ])('%s: 404', async (path) => {
    const reply = await serving.ask(`GET ${path} HTTP/1.1`);
    expect(reply.status).toBe(404);
    expect(reply.body).not.toContain('secret"');
  });
});

describe('papers', () => {
  test('go out by digest, in a sandbox, and what could run is handed over as a file', async () => {
    const reply = await serving.ask(`GET /papers/${PAPER} HTTP/1.1`);
    expect(reply).toMatchObject({ status: 200, body: '<script>1</script>' });
    expect(reply.headers).toMatchObject({ 'content-type': 'application/octet-stream', 'content-disposition': 'attachment; filename="paper-aaaaaaaaaaaa.bin"', 'x-content-type-options': 'nosniff' });
    expect(reply.headers['content-security-policy']).toMatch(/^sandbox; default-src 'none'/);
  });

  test.each(['POST', 'PUT', 'DELETE'])('%s: 405', async (method) => {
    const origin = [['Origin', `http://127.0.0.1:${serving.loopback.port}`]] as const;
    expect(await serving.ask(`${method} /papers/${PAPER} HTTP/1.1`, origin)).toMatchObject({ status: 405, headers: { allow: 'GET, HEAD' } });
  });
});

describe('pushes', () => {
  const listeners: net.Socket[] = [];
  afterEach(() => listeners.splice(0).forEach((socket) => socket.destroy()));

  /** Listens as a page does; the answer grows as more comes. */
  async function listen({ loopback: { port }, cookie }: Serving): Promise<{ heard: () => string; ended: Promise<void> }> {
    const socket = net.connect(port, '127.0.0.1');
    listeners.push(socket);
    let heard = '';
    socket.write(`GET /pushes HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nCookie: ${cookie}\r\n\r\n`);
    socket.on('data', (piece: Buffer) => (heard += piece.toString('utf8')));
    const ended = new Promise<void>((resolve) => socket.on('close', () => resolve()));
    await expect.poll(() => heard).toContain('retry: 1000');
    return { heard: () => heard, ended };
  }

  test('reach every page that listens', async () => {
    const [one, two] = [await listen(serving), await listen(serving)];
    expect(one.heard()).toContain('text/event-stream');
    serving.host.push({ kind: 'changed', stages: ['fleet'], cars: ['pip'] });
    for (const page of [one, two]) await expect.poll(page.heard).toContain('data: {"kind":"changed","stages":["fleet"],"cars":["pip"]}\n\n');
  });

  test('a heartbeat tells that the other side is there', async () => {
    const beating = await startServing({ patience: { heartbeatMs: 50 } });
    const page = await listen(beating);
    await expect.poll(page.heard).toContain(': here\n\n');
    await beating.end();
  });

  test('a page that does not read is dropped, the others hear on', async () => {
    const [deaf, hearing] = [await listen(serving), await listen(serving)];
    listeners[0]?.pause();
    const text = 'x'.repeat(500_000);
    for (let n = 0; n < 40; n += 1) {
      serving.host.push({ kind: 'changed', stages: [text], cars: [] });
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
    listeners[0]?.resume();
    await deaf.ended;
    serving.host.push({ kind: 'job-ended', job: 'j', ok: true });
    await expect.poll(hearing.heard).toContain('"job":"j"');
  });
});

describe('a connection', () => {
  test('carries one reading after another, as a browser that keeps it open asks', async () => {
    const { loopback, cookie, end } = await startServing();
    const get = (close: string) => `GET /assets/app.js HTTP/1.1\r\nHost: 127.0.0.1:${loopback.port}\r\nCookie: ${cookie}\r\n${close}\r\n`;
    const { body } = await rawBytes(loopback.port, `${get('')}${get('Connection: close\r\n')}`);
    expect(body.match(/export \{\};/g)).toHaveLength(2);
    await end();
  });
});

describe('stopping', () => {
  test('lets what is under way finish, ends the pushes, and takes no more', async () => {
    let finish = (): void => undefined;
    const working = new Promise<void>((resolve) => (finish = resolve));
    const stopping = await startServing({ host: scriptedHost({ 'yard.show': () => working.then(() => ok('kept')) }) });
    const { port } = stopping.loopback;
    const pushes = rawRequest(port, 'GET /pushes HTTP/1.1', [['Host', `127.0.0.1:${port}`], ['Cookie', stopping.cookie]]);
    const answer = stopping.post('yard.show', '{}');
    await expect.poll(() => stopping.host.calls.length).toBe(1);
    const closed = stopping.end();
    expect((await rawRequest(port, 'GET / HTTP/1.1', [])).status).toBe(0);
    expect((await pushes).status).toBe(200);
    finish();
    expect(JSON.parse((await answer).body)).toEqual({ ok: true, value: 'kept' });
    await closed;
    expect(await stopping.loopback.close()).toBeUndefined();
  });

  test('does not wait for ever', async () => {
    const stuck = await startServing({ host: scriptedHost({ 'yard.show': () => new Promise(() => undefined) }), patience: { finishMs: 100 } });
    const answer = stuck.post('yard.show', '{}');
    await expect.poll(() => stuck.host.calls.length).toBe(1);
    await stuck.end();
    expect((await answer).status).toBe(0);
  });

  test.each([
    { case: 'idle before', waitMs: 0 },
    { case: 'idle only after its last answer', waitMs: 200 },
  ])('a connection kept open by a browser, $case, does not hold it up', async ({ waitMs }) => {
    const kept = await startServing({ host: scriptedHost({ 'yard.show': () => new Promise((resolve) => setTimeout(() => resolve(ok(1)), waitMs)) }) });
    const { port } = kept.loopback;
    const agent = new http.Agent({ keepAlive: true });
    const headers = { host: `127.0.0.1:${port}`, cookie: await letIn(kept.loopback), origin: `http://127.0.0.1:${port}`, 'content-type': 'application/json' };
    const answered = new Promise((resolve) => http.request({ port, agent, headers, method: 'POST', path: '/operations/yard.show' }, (reply) => reply.resume().on('end', resolve)).end('{}'));
    if (waitMs === 0) await answered;
    else await expect.poll(() => kept.host.calls.length).toBe(1);
    const started = performance.now();
    await kept.end();
    await answered;
    expect(performance.now() - started).toBeLessThan(2_000);
    agent.destroy();
  });
});
