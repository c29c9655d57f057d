import { closeSync, constants, fstatSync, openSync, readFileSync, statSync } from 'node:fs';
import { basename } from 'node:path';
import { z } from 'zod';
import { contract } from '../../../shared-core/contract/contract.ts';
import { LARGEST_PAPER_BYTES } from '../../../shared-core/contract/host-operations.ts';
import { sayRefusal } from '../../../shared-core/result/words/say.ts';
import { parseRequest } from '../../../shared-core/result/parse-request.ts';
import { must } from '../../../shared-core/result/assert.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import type { KeptPaper } from '../../host/serve/keep-paper.ts';
import type { CommandHost } from '../command-host.ts';
import { done, wrongUse, type Command } from '../command.ts';
import { walkFiles, type FoundFile } from '../walk-files.ts';

const LONGEST_NAME = 120;
/** So much is read at a time, and the disk is waited for once. */
const MOST_BYTES = 2_000_000;
const MOST_FILES = 64;
const keepSchema = z.strictObject({ name: contract['paper.keep'].request.shape.name });
const PASSED_OVER = { link: 'a link is not followed', 'no-file': 'neither a file nor a folder', missing: 'nothing that can be read is there', 'too-many': 'too many files at once; give the rest apart' } as const;

/** What came of one file. */
interface Outcome {
  readonly path: string;
  readonly state: 'kept' | 'known' | 'refused';
  readonly paper: string | null;
  readonly code: string | null;
  readonly text: string;
}

/** Keeps papers from the disk, one after another; a file that is refused does not stop the others. */
export const papersCommand: Command = {
  name: 'papers',
  does: 'keeps receipts, certificates and photographs',
  usage: ['papers FILE_OR_FOLDER...', '    A folder is walked; no link is followed. The same bytes are kept once.'],
  run: async (input) => {
    if (input.words.length === 0) return wrongUse('papers takes files or folders.');
    const host = await input.host();
    const outcomes: Outcome[] = [];
    for (const files of someAtATime(walkFiles(input.words))) outcomes.push(...(await keepFiles(host, files)));
    const count = (state: Outcome['state']) => outcomes.filter((one) => one.state === state).length;
    const sum = `Kept ${count('kept')}, here already ${count('known')}, refused ${count('refused')}.`;
    const json = { kept: count('kept'), known: count('known'), refused: count('refused'), files: outcomes };
    const passed = outcomes.filter((one) => one.state !== 'kept').map((one) => `${JSON.stringify(one.path)}: ${one.text}`);
    const text = [...passed, sum].join('\n');
    const nothing = json.refused > 0 && json.kept + json.known === 0;
    return nothing ? { kind: 'refused', refusal: refuse('papers-none-kept', { list: passed.join('; ').replace(/\.$/, '') }).refusal, json } : done(json, text);
  },
};

/** Files in their order, as many at a time as may be in memory together. */
function* someAtATime(files: readonly FoundFile[]): Generator<readonly FoundFile[]> {
  let some: FoundFile[] = [];
  let bytes = 0;
  for (const file of files) {
    const more = file.refused === null ? (statSync(file.path, { throwIfNoEntry: false })?.size ?? 0) : 0;
    if (some.length > 0 && (bytes + more > MOST_BYTES || some.length >= MOST_FILES)) {
      yield some;
      [some, bytes] = [[], 0];
    }
    some.push(file);
    bytes += more;
  }
  if (some.length > 0) yield some;
}

async function keepFiles(host: CommandHost, files: readonly FoundFile[]): Promise<readonly Outcome[]> {
  const read = files.map((file) => ({ file, content: file.refused === null ? contentOf(file.path) : null }));
  const kept = await host.composed.keepPapers(read.flatMap(({ content }) => (content?.ok === true ? [content.value] : [])));
  const replies = kept.ok ? kept.value[Symbol.iterator]() : null;
  return read.map(({ file: { path, refused }, content }): Outcome => {
    if (refused !== null) return { path, state: 'refused', paper: null, code: refused, text: PASSED_OVER[refused] };
    const reply = content?.ok === true ? (replies === null ? kept : replies.next().value) : content;
    return outcomeOf(path, must(reply, 'an answer for each file') as Result<KeptPaper>);
  });
}

function outcomeOf(path: string, reply: Result<KeptPaper>): Outcome {
  if (!reply.ok) return { path, state: 'refused', paper: null, code: reply.refusal.code, text: sayRefusal(reply.refusal) };
  const { paper, known, uses } = reply.value;
  const [use] = uses;
  return known
    ? { path, state: 'known', paper: paper.id, code: null, text: `here already as ${paper.name}, ${use === undefined ? 'belonging to nothing yet' : `with ${use.title === '' ? use.kind : use.title}`}` }
    : { path, state: 'kept', paper: paper.id, code: null, text: '' };
}

/** What would be sent: its name by the contract's rule, and its bytes. */
function contentOf(path: string): Result<{ readonly name: string; readonly bytes: Uint8Array }> {
  const named = parseRequest(keepSchema, { name: basename(path).slice(-LONGEST_NAME) });
  if (!named.ok) return named;
  const read = readWhole(path);
  return read.ok ? ok({ name: named.value.name, bytes: read.value }) : read;
}

/** A file's bytes, unless it is too large or became something else since it was found. */
function readWhole(path: string): Result<Buffer> {
  let file: number;
  try {
    file = openSync(path, constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0));
  } catch {
    return refuse('file-unreadable', { file: basename(path) });
  }
  try {
    const there = fstatSync(file);
    if (!there.isFile()) return refuse('file-unreadable', { file: basename(path) });
    if (there.size > LARGEST_PAPER_BYTES) return refuse('paper-too-large', { most: LARGEST_PAPER_BYTES });
    return there.size === 0 ? refuse('paper-empty') : ok(readFileSync(file));
  } catch {
    return refuse('file-unreadable', { file: basename(path) });
  } finally {
    closeSync(file);
  }
}
