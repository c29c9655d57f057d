import { execFileSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';

/** Unpacks a ZIP into a folder, by a reader that shares nothing with the program's; answers the folder of the pack in it. */
export function unzipped(zip: string, folder: string): string {
  execFileSync(process.execPath, ['-e', UNPACK, zip, folder]);
  return join(folder, readdirSync(folder)[0] ?? '');
}

/** A second reader of ZIPs: stored entries by their central directory, nothing else. */
const UNPACK = `
const fs = require('node:fs'), path = require('node:path');
const [, zip, out] = process.argv, b = fs.readFileSync(zip);
let at = b.readUInt32LE(b.length - 6);
for (let n = b.readUInt16LE(b.length - 12); n > 0; n--) {
  const [size, nameLength, extra, comment, local] = [b.readUInt32LE(at + 24), b.readUInt16LE(at + 28), b.readUInt16LE(at + 30), b.readUInt16LE(at + 32), b.readUInt32LE(at + 42)];
  const file = path.join(out, b.toString('utf8', at + 46, at + 46 + nameLength));
  const from = local + 30 + b.readUInt16LE(local + 26) + b.readUInt16LE(local + 28);
  fs.mkdirSync(path.dirname(file), { recursive: true });
  fs.writeFileSync(file, b.subarray(from, from + size));
  at += 46 + nameLength + extra + comment;
}`;
