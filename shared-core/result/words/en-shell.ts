/** Where a household cannot be opened, and what stands between a page and the host. */
export const SHELL_WORDS: Readonly<Record<string, string>> = {
  'pack-out-not-a-folder': 'The pack cannot be written into {path}: a file of that name stands there. Choose another folder, or move that file.',
  'not-a-folder': 'The household’s folder cannot be made: a file stands where it should be. Choose another folder, or move that file.',
  'not-a-file': 'A folder stands where a file of the household should be. Move it, or restore a backup.',
  'key-unreadable': 'The household’s key at {path} cannot be read ({why}). Put the key back from a backup; nothing was changed.',
  'key-not-saved': 'The household’s key could not be saved at {path} ({why}). Make the folder writable, then try again.',

  'no-answer': 'Trunnion does not answer. It may have been stopped: start it again, and open the link it prints.',
  'not-our-page': 'Only Trunnion’s own page may ask for that.',
  'place-named-by-page': 'A page may not name a place on the disk. Leave it out, or use the command line.',
  'request-not-json': 'That could not be read as a request. Load the page again.',
  'request-too-slow': 'The request broke off on its way. Try again.',
};
