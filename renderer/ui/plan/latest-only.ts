/** Asks for one thing at a time: while an answer is awaited only the newest wish is kept, and an answer to an older one is dropped. */
export interface LatestOnly<Request> {
  readonly want: (request: Request) => void;
  /** Forgets what is wanted; an answer under way is dropped. */
  readonly forget: () => void;
}

/**
 * Requests go out in order, one at a time; `tell` hears only the answer to what was wanted last.
 *
 * @example latestOnly(ask, tell).want(request)
 */
export function latestOnly<Request, Reply>(ask: (request: Request) => Promise<Reply>, tell: (request: Request, reply: Reply) => void): LatestOnly<Request> {
  let wanted: { readonly request: Request } | null = null;
  let asked: { readonly request: Request } | null = null;

  const run = async () => {
    while (wanted !== null && wanted !== asked) {
      asked = wanted;
      const mine: { readonly request: Request } = wanted;
      const reply = await ask(mine.request);
      if (wanted === mine) tell(mine.request, reply);
    }
    asked = null;
  };

  return {
    want: (request) => {
      wanted = { request };
      if (asked === null) void run();
    },
    forget: () => {
      wanted = null;
    },
  };
}
