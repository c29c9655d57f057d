/** Where a kept paper is shown from, by its digest. @example paperAddress('ab12') //=> '/papers/ab12' */
export function paperAddress(id: string): string {
  return `/papers/${id}`;
}
