/** The most files taken at once: a folder dropped by mistake must not hold the page for ever. */
const MOST_FILES = 5000;

/** The files that were dropped, folders walked in order of name. */
export async function droppedFiles(transfer: DataTransfer): Promise<readonly File[]> {
  // Read before anything is awaited: the list is gone afterwards.
  const entries = [...transfer.items].filter((item) => item.kind === 'file').map((item) => item.webkitGetAsEntry());
  const plain = [...transfer.files];
  if (entries.every((entry) => entry === null)) return plain;
  const found: File[] = [];
  for (const entry of entries) if (entry !== null) await walk(entry, found);
  return found;
}

async function walk(entry: FileSystemEntry, found: File[]): Promise<void> {
  if (found.length >= MOST_FILES) return;
  if (entry.isFile) {
    const file = await new Promise<File | null>((resolve) => (entry as FileSystemFileEntry).file(resolve, () => resolve(null)));
    if (file !== null) found.push(file);
    return;
  }
  const reader = (entry as FileSystemDirectoryEntry).createReader();
  const inside: FileSystemEntry[] = [];
  for (;;) {
    // A folder is read in pieces; an empty piece is its end.
    const piece = await new Promise<FileSystemEntry[]>((resolve) => reader.readEntries(resolve, () => resolve([])));
    if (piece.length === 0) break;
    inside.push(...piece);
  }
  for (const one of inside.sort((a, b) => (a.name < b.name ? -1 : 1))) if (!one.name.startsWith('.')) await walk(one, found);
}
