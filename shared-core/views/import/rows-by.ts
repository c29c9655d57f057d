/** Rows that share a key, in the order in which each key was first met. @example rowsBy([1, 2, 3], (one) => one % 2) //=> 1: [1, 3], 0: [2] */
export function rowsBy<Row, Key>(rows: readonly Row[], keyOf: (row: Row) => Key): Map<Key, Row[]> {
  const groups = new Map<Key, Row[]>();
  for (const row of rows) {
    const key = keyOf(row);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [row]);
    else group.push(row);
  }
  return groups;
}
