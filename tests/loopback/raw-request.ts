import net from 'node:net';

/** What came back, as text. */
export interface RawReply {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: string;
}

/**
 * Sends the bytes of a request as they stand, which no HTTP client would do for a hostile one, and reads until the other side hangs up.
 *
 * @example await rawRequest(port, 'GET / HTTP/1.1', [['Host', 'evil.example']]) //=> { status: 421, ... }
 */
export function rawRequest(port: number, line: string, headers: readonly (readonly [string, string])[], body = ''): Promise<RawReply> {
  const length: [string, string][] = body === '' ? [] : [['Content-Length', String(Buffer.byteLength(body))]];
  const head = [...headers, ...length, ['Connection', 'close'] as const].map(([name, value]) => `${name}: ${value}\r\n`).join('');
  return rawBytes(port, `${line}\r\n${head}\r\n${body}`);
}

/** Sends bytes and reads what comes until the end; status 0 where nothing came. */
export function rawBytes(port: number, bytes: string): Promise<RawReply> {
  return new Promise((resolve) => {
    const socket = net.connect(port, '127.0.0.1', () => socket.write(bytes));
    const pieces: Buffer[] = [];
    socket.on('data', (piece: Buffer) => pieces.push(piece));
    socket.on('error', () => undefined);
    socket.on('close', () => resolve(parse(Buffer.concat(pieces).toString('utf8'))));
  });
}

function parse(text: string): RawReply {
  const [head = '', ...rest] = text.split('\r\n\r\n');
  const [first = '', ...lines] = head.split('\r\n');
  const headers = lines.map((line) => [line.slice(0, line.indexOf(':')).toLowerCase(), line.slice(line.indexOf(':') + 1).trim()] as const);
  return { status: Number(first.split(' ')[1] ?? 0), headers: Object.fromEntries(headers), body: rest.join('\r\n\r\n') };
}
