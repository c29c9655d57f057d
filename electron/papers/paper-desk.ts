import { readFileSync } from 'node:fs';
import type { PaperContents } from '../../shared-core/records/paper-contents.ts';
import type { Paper } from '../../shared-core/records/paper.ts';
import { ok, refuse, type Result } from '../../shared-core/result/result.ts';
import { copyKey, keepCopy, keptCopy, type RedactedCopy } from './kept-copy.ts';
import { keepContents, keptContents, keptThumbnail } from './kept-contents.ts';
import type { MadeContents } from './make-contents.ts';
import { pdfThread, type PdfThread } from './pdf-thread.ts';
import { readPaper } from './read-paper.ts';
import type { Blackening } from './redact-image.ts';
import { renderPdfPage } from './render-pdf-page.ts';

/** The longest side of a page that is looked at, in points. */
const FULL_VIEW = 2000;
/** Contents held in memory; a household with more papers reads the rest from its disk. */
const MOST_HELD = 5000;

/** Where papers are looked into: what their bytes tell, their thumbnails and the pictures of their pages. */
export interface PaperDesk {
  /** The thread that reads and draws PDFs. */
  readonly pdf: PdfThread;
  /** What a paper's bytes tell, if it has been looked into. */
  known(folder: string, id: string): PaperContents | null;
  /** What a paper's bytes tell; it is looked into where it has not been. Null where its bytes are not whole. */
  contents(folder: string, paper: Paper): Promise<PaperContents | null>;
  /** The thumbnail as WebP; made where it is missing or wrong; null where there can be none. */
  thumbnail(folder: string, paper: Paper): Promise<Uint8Array | null>;
  /** A page, counted from 1, as WebP; null where there is none. */
  page(folder: string, paper: Paper, page: number): Promise<Uint8Array | null>;
  /** A copy of a paper that is black where it is marked; refused where its bytes are not whole or cannot be drawn. */
  copy(folder: string, paper: Paper, how: Blackening): Promise<Result<RedactedCopy>>;
  /** A page of such a copy, counted from 1, as WebP; null where there is none. */
  copyPage(copy: RedactedCopy, page: number): Promise<Uint8Array | null>;
  /** Looks into a paper when there is time; `after` is called once nothing is left to look into. */
  soon(folder: string, paper: Paper, after: () => void): void;
  close(): Promise<void>;
}

/** A desk with a thread of its own, which is started when it is first needed. */
export function paperDesk(pdf: PdfThread = pdfThread()): PaperDesk {
  const held = new Map<string, PaperContents>();
  let last: Promise<unknown> = Promise.resolve();
  let waiting = 0;
  let closed = false;
  /** One at a time: a folder of a thousand photographs takes no more memory than one. */
  const inTurn = <Value>(work: () => Promise<Value>): Promise<Value> => {
    const done = last.then(work);
    last = done.catch(() => undefined);
    return done;
  };
  const hold = (folder: string, id: string, contents: PaperContents) => {
    if (held.size >= MOST_HELD) held.delete(held.keys().next().value ?? '');
    held.set(`${folder}/${id}`, contents);
  };
  const known = (folder: string, id: string): PaperContents | null => {
    const there = held.get(`${folder}/${id}`);
    if (there !== undefined) return there;
    const kept = keptContents(folder, id);
    if (kept !== null) hold(folder, id, kept);
    return kept;
  };
  const make = async (folder: string, { id, media }: Paper): Promise<MadeContents | null> => {
    const read = readPaper(folder, id);
    if (read.state !== 'whole' || closed) return null;
    // Loaded only when a paper is looked into: every command passes here.
    const { makeContents } = await import('./make-contents.ts');
    const made = await makeContents(pdf, read.bytes, media);
    if (closed) return null;
    if (made.passing !== true) keepContents(folder, id, made);
    hold(folder, id, made.contents);
    return made;
  };
  const contents = async (folder: string, paper: Paper) => known(folder, paper.id) ?? (await inTurn(async () => known(folder, paper.id) ?? (await make(folder, paper))?.contents ?? null));
  const picture = async (bytes: Uint8Array, media: string, page: number): Promise<Uint8Array | null> => {
    const { shrinkImage } = await import('./decode-image.ts');
    if (media !== 'application/pdf') return page === 1 ? shrinkImage(bytes, FULL_VIEW) : null;
    const drawn = await renderPdfPage(pdf, bytes, page, FULL_VIEW);
    return drawn.ok ? shrinkImage(drawn.value, FULL_VIEW) : null;
  };
  const makeCopy = async (folder: string, paper: Paper, how: Blackening): Promise<Result<RedactedCopy>> => {
    const read = readPaper(folder, paper.id);
    if (read.state !== 'whole') return refuse('paper-not-whole', { name: paper.name });
    const { redactPaper } = await import('./redact-paper.ts');
    const made = await redactPaper(pdf, read.bytes, paper.media, how);
    return made.ok ? ok(keepCopy(folder, copyKey(paper.id, how), made.value.bytes, made.value)) : made;
  };
  return {
    pdf,
    known,
    contents,
    thumbnail: async (folder, paper) => {
      const found = await contents(folder, paper);
      if (found?.thumbnail == null) return null;
      return keptThumbnail(folder, paper.id, found.thumbnail) ?? (await inTurn(() => make(folder, paper)))?.thumbnail ?? null;
    },
    page: (folder, paper, page) => inTurn(async () => {
      const read = readPaper(folder, paper.id);
      if (read.state !== 'whole' || paper.media === 'application/octet-stream') return null;
      return picture(read.bytes, paper.media, page);
    }),
    copy: (folder, paper, how) => inTurn(async () => {
      const kept = keptCopy(folder, copyKey(paper.id, how));
      return kept === null ? makeCopy(folder, paper, how) : ok(kept);
    }),
    copyPage: (copy, page) => inTurn(async () => picture(readFileSync(copy.path), copy.media, page)),
    soon: (folder, paper, after) => {
      if (known(folder, paper.id) !== null) return;
      waiting += 1;
      void contents(folder, paper).catch(() => null).then(() => {
        waiting -= 1;
        if (waiting === 0 && !closed) after();
      });
    },
    close: async () => {
      closed = true;
      await pdf.close();
      await last;
    },
  };
}
