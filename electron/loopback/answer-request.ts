import type { IncomingMessage, ServerResponse } from 'node:http';
import { answerOperation, operationInPath, type OperationServer } from './answer-operation.ts';
import type { LinkTokens } from './link-tokens.ts';
import type { PageFiles } from './page-files.ts';
import { paperHeaders, type FindPaper } from './paper-answer.ts';
import { paperInPath } from './paper-path.ts';
import type { PushStreams } from './push-streams.ts';
import { give, say } from './replies.ts';
import { guardRequest } from './request-guard.ts';

/** What the addresses of one running server lead to. */
export interface Routes {
  readonly port: number;
  readonly tokens: LinkTokens;
  readonly files: PageFiles;
  readonly pushes: PushStreams;
  readonly operations: OperationServer;
  readonly paper: FindPaper;
}

/** One request and the response to it. */
interface Exchange {
  readonly request: IncomingMessage;
  readonly response: ServerResponse;
  readonly path: string;
}

const NOT_LET_IN = 'Open the link that Trunnion printed in its terminal. Each link lets one browser in, once.';
const LINK_IS_USED = 'This link has been used, or was never given out. Each link lets one browser in, once. Press Enter in the terminal for another, or stop the program there and start it again.';

/** Answers one request: first whether it may ask at all, then whether it was let in, then what it asks for. */
export async function answerRequest(routes: Routes, request: IncomingMessage, response: ServerResponse): Promise<void> {
  const { method = '', url = '', rawHeaders } = request;
  const guarded = guardRequest({ method, target: url, rawHeaders }, routes.port);
  if (!guarded.ok) return say(response, guarded.status, guarded.why);
  const exchange = { request, response, path: guarded.path };
  if (guarded.path === '/enter') return enter(routes, exchange, guarded.query.get('token') ?? '');
  return routes.tokens.isKnown(request.headers.cookie) ? answerKnown(routes, exchange) : say(response, 401, NOT_LET_IN);
}

async function answerKnown(routes: Routes, exchange: Exchange): Promise<void> {
  const { request, response, path } = exchange;
  const reads = request.method === 'GET' || request.method === 'HEAD';
  if (path.startsWith('/operations/')) return request.method === 'POST' ? operate(routes, exchange) : refuseMethod(response, 'POST');
  if (path === '/pushes') return request.method === 'GET' ? routes.pushes.open(response) : refuseMethod(response, 'GET');
  if (!reads) return refuseMethod(response, 'GET, HEAD');
  return path.startsWith('/papers/') ? givePaper(routes, exchange) : givePage(routes, exchange);
}

/** Takes the link's token for a cookie. A browser that only looks ahead at a link does not use it up. */
function enter({ tokens }: Routes, { request, response }: Exchange, token: string): void {
  if (request.method !== 'GET') return refuseMethod(response, 'GET');
  if (request.headers['sec-purpose'] !== undefined) return say(response, 503, 'This link is opened once, by a person.');
  const cookie = tokens.exchange(token);
  return cookie === null ? say(response, 401, LINK_IS_USED) : give(response, 303, { 'set-cookie': cookie, location: '/' }, '');
}

async function operate({ operations }: Routes, { request, response, path }: Exchange): Promise<void> {
  const { status, result } = await answerOperation(operations, operationInPath(path) ?? '', request);
  give(response, status, { 'content-type': 'application/json; charset=utf-8' }, JSON.stringify(result));
}

async function givePaper(routes: Routes, { response, path }: Exchange): Promise<void> {
  const asked = paperInPath(path);
  const paper = asked === null ? null : await routes.paper(asked);
  if (asked === null || paper === null) return say(response, 404, 'There is no such paper here.');
  return give(response, 200, paperHeaders(asked.sha256, paper.mediaType), paper.bytes);
}

function givePage({ files }: Routes, { response, path }: Exchange): void {
  const found = files.answer(path);
  return found === null ? say(response, 404, 'There is nothing here by that name.') : give(response, 200, found.headers, found.body);
}

function refuseMethod(response: ServerResponse, allowed: string): void {
  response.setHeader('allow', allowed);
  say(response, 405, `This address takes ${allowed}.`);
}
