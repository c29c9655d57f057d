import { createHash, randomBytes } from 'node:crypto';

/** Who may ask: links that are good for one opening, and the browsers that opened one. */
export interface LinkTokens {
  /** A new token for a link. */
  issue(): string;
  /** The cookie for a token that is good, which is then used up; null for any other. */
  exchange(token: string): string | null;
  /** Whether a request's Cookie header holds a cookie given out here. */
  isKnown(cookieHeader: string | undefined): boolean;
}

/** Tokens and cookies live in memory, as digests, until the program stops. Cookies do not tell ports apart, so their name does. */
export function linkTokens(port: number): LinkTokens {
  const waiting = new Set<string>();
  const known = new Set<string>();
  const name = `trunnion-${port}`;
  return {
    issue: () => remember(waiting),
    exchange(token) {
      if (!waiting.delete(digest(token))) return null;
      return `${name}=${remember(known)}; Path=/; HttpOnly; SameSite=Strict`;
    },
    isKnown: (header) => cookiesOf(header, name).some((value) => known.has(digest(value))),
  };
}

function remember(where: Set<string>): string {
  const secret = randomBytes(32).toString('base64url');
  where.add(digest(secret));
  return secret;
}

/** Looking up a digest tells nothing about how much of a guess was right. */
function digest(text: string): string {
  return createHash('sha256').update(text).digest('base64');
}

function cookiesOf(header: string | undefined, name: string): string[] {
  const pairs = (header ?? '').split(';').map((pair) => pair.trim());
  return pairs.filter((pair) => pair.startsWith(`${name}=`)).map((pair) => pair.slice(name.length + 1));
}
