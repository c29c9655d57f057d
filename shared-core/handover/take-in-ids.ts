const LONGEST_ID = 64;

/** Ids of this household's own for those of a pack: as they are, or the end of a long one, numbered where another one has it already. */
export function namerOf(digest: string, known: ReadonlySet<string>): (id: string) => string {
  const first = `k${digest.slice(0, 8)}-`;
  const room = LONGEST_ID - first.length;
  const used = new Set<string>();
  const names = new Map<string, string>();
  for (const id of [...known].sort((a, b) => a.length - b.length || (a < b ? -1 : 1))) {
    let end = id.slice(-room);
    for (let number = 2; used.has(end); number += 1) end = `${id.slice(-room).slice(0, room - 1 - String(number).length)}-${number}`;
    used.add(end);
    names.set(id, `${first}${end}`);
  }
  return (id) => names.get(id) ?? `${first}${id}`;
}
