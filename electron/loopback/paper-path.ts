/** Which picture of a paper is asked for: its bytes as they are, its thumbnail, or one page. */
export type PaperPart = 'whole' | 'thumbnail' | { readonly page: number };

/** A paper and the part of it that an address names. */
export interface PaperAsked {
  readonly sha256: string;
  readonly part: PaperPart;
}

/** What an address of a paper asks for; null for any other address. @example paperInPath('/papers/ab') //=> null */
export function paperInPath(urlPath: string): PaperAsked | null {
  const parts = /^\/papers\/([0-9a-f]{64})(?:\/(thumbnail)|\/pages\/([1-9][0-9]{0,4}))?$/.exec(urlPath);
  if (parts?.[1] === undefined || urlPath.endsWith('\n')) return null;
  const page = parts[3];
  return { sha256: parts[1], part: page === undefined ? (parts[2] === undefined ? 'whole' : 'thumbnail') : { page: Number(page) } };
}
