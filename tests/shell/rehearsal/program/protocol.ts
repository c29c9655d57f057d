import { app } from './app.ts';

interface Scheme {
  readonly scheme: string;
  readonly privileges?: Readonly<Record<string, boolean>>;
}
type Handler = (request: Request) => Response | Promise<Response>;

const schemes = new Map<string, Scheme>();
const handlers = new Map<string, Handler>();

/** The program's own schemes. */
export const protocol = {
  registerSchemesAsPrivileged: (given: readonly Scheme[]) => {
    if (app.isReady()) throw new Error('protocol.registerSchemesAsPrivileged should be called before app is ready');
    given.forEach((one) => schemes.set(one.scheme, one));
  },
  handle: (scheme: string, handler: Handler) => void handlers.set(scheme, handler),
  isProtocolHandled: (scheme: string) => handlers.has(scheme),
};

/** An answer as it goes to the stage. */
export interface Answered {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Uint8Array;
}

/** What the program answers to a request for one of its schemes; null where no such scheme is served. */
export async function answerScheme(url: string, method: string, headers: Readonly<Record<string, string>>): Promise<Answered | null> {
  const scheme = new URL(url).protocol.slice(0, -1);
  const privileges = schemes.get(scheme)?.privileges;
  // Without these two a page of the scheme would have no origin of its own; the stage shows no such page.
  if (privileges?.['standard'] !== true || privileges['secure'] !== true) return null;
  const answer = await handlers.get(scheme)?.(schemeRequest(url, method, headers));
  return answer === undefined ? null : { status: answer.status, headers: Object.fromEntries(answer.headers), body: new Uint8Array(await answer.arrayBuffer()) };
}

function schemeRequest(url: string, method: string, headers: Readonly<Record<string, string>>): Request {
  return new Request(url, { method, headers });
}
