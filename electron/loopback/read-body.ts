import type { IncomingMessage } from 'node:http';

/** A request's body as text, or why it was not taken. */
export type ReadBody = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly why: 'too-large' | 'too-slow' | 'broken-off' | 'not-text' };

export interface BodyLimits {
  readonly bytes: number;
  /** The longest silence between two pieces, in milliseconds. */
  readonly silenceMs: number;
}

/** Reads a body up to a limit; one that announces or sends more, or falls silent, is given up at once. */
export function readBody(request: IncomingMessage, { bytes, silenceMs }: BodyLimits): Promise<ReadBody> {
  if (Number(request.headers['content-length'] ?? 0) > bytes) return Promise.resolve({ ok: false, why: 'too-large' });
  return new Promise((resolve) => {
    const pieces: Buffer[] = [];
    let size = 0;
    const end = (outcome: ReadBody) => {
      clearTimeout(silence);
      request.removeAllListeners('data');
      resolve(outcome);
    };
    const silence = setTimeout(() => end({ ok: false, why: 'too-slow' }), silenceMs);
    request.on('data', (piece: Buffer) => {
      silence.refresh();
      pieces.push(piece);
      size += piece.length;
      if (size > bytes) end({ ok: false, why: 'too-large' });
    });
    request.on('end', () => end(asText(Buffer.concat(pieces))));
    request.on('error', () => end({ ok: false, why: 'broken-off' }));
    request.on('close', () => end({ ok: false, why: 'broken-off' }));
  });
}

/** Bytes that are not UTF-8 are refused, never mended. */
function asText(body: Buffer): ReadBody {
  try {
    return { ok: true, text: new TextDecoder('utf-8', { fatal: true }).decode(body) };
  } catch {
    return { ok: false, why: 'not-text' };
  }
}
