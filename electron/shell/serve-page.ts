import type { Protocol } from 'electron';
import type { PageFiles } from '../loopback/page-files.ts';
import { paperHeaders, type FindPaper } from '../loopback/paper-answer.ts';
import { paperInPath } from '../loopback/paper-path.ts';
import { isOwnPage, PAGE_SCHEME } from './page-address.ts';

/** What must be known of our scheme before the program is ready: a standard, secure one, so that the page has an origin. */
export const PRIVILEGED_SCHEME = { scheme: PAGE_SCHEME, privileges: { standard: true, secure: true, supportFetchAPI: true } } as const;

/** Gives the window its page and its papers, read-only, by the same answers and headers as the loopback server. */
export function servePage(protocol: Protocol, files: PageFiles, paper: FindPaper): void {
  protocol.handle(PAGE_SCHEME, (request) => answerPage(request, files, paper));
}

/** One answer. Anything but a plain reading of our own host is refused. */
export async function answerPage(request: Pick<Request, 'method' | 'url'>, files: PageFiles, paper: FindPaper): Promise<Response> {
  if (request.method !== 'GET' && request.method !== 'HEAD') return new Response(null, { status: 405 });
  if (!isOwnPage(request.url)) return new Response(null, { status: 421 });
  const { pathname } = new URL(request.url);
  const asked = paperInPath(pathname);
  if (asked !== null) return answerPaper(asked.sha256, await paper(asked));
  const found = pathname.startsWith('/papers/') ? null : files.answer(pathname);
  return found === null ? new Response(null, { status: 404 }) : new Response(asBody(found.body), { headers: { ...found.headers } });
}

function answerPaper(sha256: string, paper: Awaited<ReturnType<FindPaper>>): Response {
  return paper === null ? new Response(null, { status: 404 }) : new Response(asBody(paper.bytes), { headers: paperHeaders(sha256, paper.mediaType) });
}

/** The bytes in memory of their own, as a Response wants them. */
function asBody(bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  return new Uint8Array(bytes);
}
