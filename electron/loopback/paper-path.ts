/** Which picture of a paper is asked for: its bytes as they are, its thumbnail, one page, or one page of the copy in which parts are blacked out. */
export type PaperPart = 'whole' | 'thumbnail' | { readonly page: number; readonly of: 'paper' | 'copy' };

/** A paper and the part of it that an address names. */
export interface PaperAsked {
  readonly sha256: string;
  readonly part: PaperPart;
}

/** What an address of a paper asks for; null for any other address. @example paperInPath('/papers/ab') //=> null */
export function paperInPath(urlPath: string): PaperAsked | null {
  const parts = /^\/papers\/([0-9a-f]{64})(?:\/(thumbnail)|\/(pages|copy)\/([1-9][0-9]{0,4}))?$/.exec(urlPath);
  if (parts?.[1] === undefined || urlPath.endsWith('\n')) return null;
  const [, sha256, thumbnail, kind, page] = parts;
  if (page === undefined) return { sha256, part: thumbnail === undefined ? 'whole' : 'thumbnail' };
  return { sha256, part: { page: Number(page), of: kind === 'copy' ? 'copy' : 'paper' } };
}
