/** Where a kept paper is shown from, by its digest. @example paperAddress('ab12') //=> '/papers/ab12' */
export function paperAddress(id: string): string {
  return `/papers/${id}`;
}

/** Where the small picture of a paper is shown from. @example thumbnailAddress('ab12') //=> '/papers/ab12/thumbnail' */
export function thumbnailAddress(id: string): string {
  return `/papers/${id}/thumbnail`;
}

/** Where the picture of one page of a paper is shown from, counted from 1. @example pageAddress('ab12', 2) //=> '/papers/ab12/pages/2' */
export function pageAddress(id: string, page: number): string {
  return `/papers/${id}/pages/${page}`;
}

/** Where a page of the copy with black parts is shown from; `state` says of which marks, so that no older picture is shown. */
export function copyAddress(id: string, page: number, state: string): string {
  return `/papers/${id}/copy/${page}?of=${encodeURIComponent(state)}`;
}
