import { parentPort } from 'node:worker_threads';
import { PDFiumLibrary, type PDFiumDocument } from '@hyzyla/pdfium';
import type { PdfReply, PdfRequest } from './pdf-messages.ts';

/** Whatever a file asks for, PDFium gets no more memory than this, in bytes. */
const MOST_MEMORY = 400_000_000;
/** Points of a page picture, whatever the shape of the page. */
const MOST_POINTS = 25_000_000;

boundMemory();
const library = PDFiumLibrary.init();

/** A module of WebAssembly grows by this one door: where it is shut, PDFium is told that there is no memory, and fails. */
function boundMemory(): void {
  const memory = (globalThis as unknown as { readonly WebAssembly: { readonly Memory: { readonly prototype: GrowingMemory } } }).WebAssembly.Memory.prototype;
  const grow = memory.grow;
  memory.grow = function (this: GrowingMemory, pages) {
    if (this.buffer.byteLength + pages * 65_536 > MOST_MEMORY) throw new RangeError('too much memory');
    return grow.call(this, pages);
  };
}

interface GrowingMemory {
  readonly buffer: ArrayBuffer;
  grow: (this: GrowingMemory, pages: number) => number;
}

async function answer(request: PdfRequest): Promise<void> {
  const reply = await replyTo(request).catch((error: unknown): PdfReply => ({ kind: 'failed', locked: /password|security/i.test(String(error)) }));
  parentPort?.postMessage(reply, reply.kind === 'rendered' ? [reply.image.rgba.buffer as ArrayBuffer] : []);
}

async function replyTo(request: PdfRequest): Promise<PdfReply> {
  const document = await (await library).loadDocument(request.bytes);
  const reply = request.kind === 'read' ? read(document, request) : await render(document, request);
  document.destroy();
  return reply;
}

function read(document: PDFiumDocument, { mostPages, mostLetters }: Extract<PdfRequest, { kind: 'read' }>): PdfReply {
  const pages = document.getPageCount();
  if (pages < 1) return { kind: 'failed', locked: false };
  const text: string[] = [];
  let size: { originalWidth: number; originalHeight: number } | null = null;
  for (let at = 0, letters = 0; at < Math.min(pages, mostPages) && letters < mostLetters; at += 1) {
    const page = document.getPage(at);
    size ??= page.getOriginalSize();
    const words = page.getText().slice(0, mostLetters - letters);
    text.push(words);
    letters += words.length;
  }
  return { kind: 'read', contents: { pages, width: Math.round(size?.originalWidth ?? 0), height: Math.round(size?.originalHeight ?? 0), text } };
}

async function render(document: PDFiumDocument, { page, pixelsWide, mostDotsPerInch }: Extract<PdfRequest, { kind: 'render' }>): Promise<PdfReply> {
  if (page < 1 || page > document.getPageCount()) return { kind: 'no-page' };
  const drawn = document.getPage(page - 1);
  const { originalWidth, originalHeight } = drawn.getOriginalSize();
  const scale = Math.min(pixelsWide / originalWidth, (mostDotsPerInch ?? Infinity) / 72, Math.sqrt(MOST_POINTS / (originalWidth * originalHeight)));
  if (!(scale > 0) || !Number.isFinite(scale)) return { kind: 'failed', locked: false };
  const size = { width: Math.max(1, Math.floor(originalWidth * scale)), height: Math.max(1, Math.floor(originalHeight * scale)) };
  const { width, height, data } = await drawn.render({ ...size, scale: 1, render: 'bitmap' });
  return { kind: 'rendered', image: { width, height, rgba: data, page: { width: originalWidth, height: originalHeight } } };
}

parentPort?.on('message', (request: PdfRequest) => void answer(request));
