import { Worker } from 'node:worker_threads';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import type { PdfReply, PdfRequest } from './pdf-messages.ts';

/** A thread in which PDFs are read and drawn; a file that breaks it ends the thread and nothing else. */
export interface PdfThread {
  /** Asks it one thing; requests made at the same time are answered one after another. */
  ask(request: PdfRequest): Promise<Result<Exclude<PdfReply, { kind: 'failed' | 'no-page' }>>>;
  /** Ends the thread; what was asked is refused. */
  close(): Promise<void>;
}

/** How long one document may take, in milliseconds. */
const PATIENCE_MS = 15_000;
/** A thread without work is ended after this: it holds the memory of the largest file it saw. */
const IDLE_MS = 20_000;

/** What PDFium remarks about a broken file is nobody's to read. */
function startPdfWorker(): Worker {
  const worker = new Worker(new URL('./pdf-worker.ts', import.meta.url), { resourceLimits: { maxOldGenerationSizeMb: 256 }, stdout: true, stderr: true });
  worker.stdout.resume();
  worker.stderr.resume();
  return worker;
}

/**
 * A thread for PDFs, started when it is first asked. A document that takes too long, or breaks the thread, is refused, and the next one gets
 * a fresh thread.
 *
 * @example const thread = pdfThread(); await thread.ask({ kind: 'render', bytes, page: 1, pixelsWide: 800 });
 */
export function pdfThread(patienceMs: number = PATIENCE_MS, startWorker: () => Worker = startPdfWorker): PdfThread {
  let worker: Worker | null = null;
  let idle: NodeJS.Timeout | null = null;
  let closed = false;
  let last: Promise<unknown> = Promise.resolve();
  const drop = async () => {
    const dropped = worker;
    worker = null;
    await dropped?.terminate();
  };
  const askNow = async (request: PdfRequest): ReturnType<PdfThread['ask']> => {
    if (closed) return refuse('pdf-broken');
    if (idle !== null) clearTimeout(idle);
    // A thread that dies while idle must not take the program with it.
    const asked = (worker ??= startWorker().on('error', () => undefined));
    const reply = await untilReply(asked, request, patienceMs);
    // At rest it holds nothing up; one that is being ended is held until it has, or a program that waits for that could end before it.
    if (worker === asked) asked.unref();
    if (reply.kind === 'no-page') return refuse('no-such-page', {}, ['page']);
    if (reply.kind === 'failed' || reply.kind === 'too-slow') {
      await drop();
      return refuse(reply.kind === 'too-slow' ? 'pdf-too-slow' : reply.locked ? 'pdf-locked' : 'pdf-broken');
    }
    idle = setTimeout(() => void drop(), IDLE_MS).unref();
    return ok(reply);
  };
  return {
    ask: (request) => {
      const answered = last.then(() => askNow(request));
      last = answered;
      return answered;
    },
    close: async () => {
      closed = true;
      if (idle !== null) clearTimeout(idle);
      await drop();
      await last;
    },
  };
}

function untilReply(worker: Worker, request: PdfRequest, patienceMs: number): Promise<PdfReply | { readonly kind: 'too-slow' }> {
  return new Promise((resolve) => {
    const onDeath = () => end({ kind: 'failed', locked: false });
    const tooSlow = setTimeout(() => end({ kind: 'too-slow' }), patienceMs);
    const end = (reply: PdfReply | { readonly kind: 'too-slow' }) => {
      clearTimeout(tooSlow);
      worker.off('message', end).off('error', onDeath).off('exit', onDeath);
      resolve(reply);
    };
    worker.on('message', end).on('error', onDeath).on('exit', onDeath).ref();
    worker.postMessage(request);
  });
}
