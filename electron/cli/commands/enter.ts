import { readFileSync, statSync } from 'node:fs';
import { basename, dirname, resolve } from 'node:path';
import { z } from 'zod';
import { LARGEST_PAPER_BYTES } from '../../../shared-core/contract/host-operations.ts';
import { contract, operationNames } from '../../../shared-core/contract/contract.ts';
import { parseRequest } from '../../../shared-core/result/parse-request.ts';
import { ok, refuse, type Result } from '../../../shared-core/result/result.ts';
import { sayRefusal } from '../../../shared-core/result/words/say.ts';
import { done, refused, wrongUse, type Command, type CommandAnswer } from '../command.ts';
import type { CommandHost } from '../command-host.ts';
import { readJson } from '../read-input.ts';

const entrySchema = z.strictObject({ operation: z.string(), request: z.record(z.string(), z.unknown()).default({}) });
const paperFileSchema = z.strictObject({ file: z.string().min(1), name: z.string().optional() });
type EntryRequest = z.infer<typeof entrySchema>;

/** Any change of the contract by its name; a list stops at the first refusal. */
export const enterCommand: Command = {
  name: 'enter',
  does: 'enters anything by the name of its operation (a car, an interval, an offer, a record)',
  usage: ['enter FILE.json', 'enter -            (reads standard input)', 'enter --list       (names and schemas)', '', 'A file holds {"operation": NAME, "request": {...}} or a list of them.', 'A list stops at the first refusal; what stands before it is entered.', 'For paper.keep the request may be {"file": PATH, "name": NAME}.'],
  options: { list: { type: 'boolean' } },
  run: async (input) => {
    if (input.options['list'] === true) return listOperations();
    const [file] = input.words;
    if (file === undefined || input.words.length !== 1) return wrongUse('enter takes one file, or - for standard input.');
    const read = readJson(file);
    if (!read.ok) return refused(read.refusal);
    const many = Array.isArray(read.value);
    const entries = parseRequest(z.array(entrySchema).max(100_000), many ? read.value : [read.value]);
    if (!entries.ok) return refused(entries.refusal);
    return enterAll(await input.host(), entries.value, many, file === '-' ? '.' : dirname(resolve(file)));
  },
};

async function enterAll(host: CommandHost, entries: readonly EntryRequest[], many: boolean, folder: string): Promise<CommandAnswer> {
  const replies: { operation: string; reply: unknown }[] = [];
  for (const [at, entry] of entries.entries()) {
    const reply = await enterOne(host, entry, folder);
    if (!reply.ok) {
      const refusedAt = { at, operation: entry.operation, ...reply.refusal, text: sayRefusal(reply.refusal) };
      const { refusal } = many ? refuse('entry-refused', { number: at + 1, of: entries.length, operation: entry.operation, done: at, why: refusedAt.text }) : reply;
      return { kind: 'refused', refusal, json: { entered: replies, refused: refusedAt } };
    }
    replies.push({ operation: entry.operation, reply: reply.value });
  }
  return done(many ? { entered: replies } : replies[0]?.reply, `${replies.length} entered.`);
}

function enterOne(host: CommandHost, entry: EntryRequest, folder: string): Promise<Result<unknown>> | Result<unknown> {
  const known = (operationNames as readonly string[]).includes(entry.operation) ? contract[entry.operation as keyof typeof contract] : null;
  if (known?.kind !== 'do') return refuse('unknown-operation', { operation: entry.operation.slice(0, 60) });
  if (entry.operation !== 'paper.keep' || entry.request['file'] === undefined) return host.callAny(entry.operation, entry.request);
  const named = parseRequest(paperFileSchema, entry.request);
  if (!named.ok) return named;
  const paper = paperFromFile(resolve(folder, named.value.file), named.value.name);
  return paper.ok ? host.callAny('paper.keep', paper.value) : paper;
}

/** Only a plain file of a size that can be kept is read at all: a pipe or a device would never end. */
function paperFromFile(path: string, name: string = basename(path)): Result<{ name: string; base64: string }> {
  try {
    const file = statSync(path);
    if (!file.isFile()) return refuse('file-unreadable', { file: path });
    if (file.size > LARGEST_PAPER_BYTES) return refuse('paper-too-large', { most: LARGEST_PAPER_BYTES });
    return ok({ name, base64: readFileSync(path).toString('base64') });
  } catch {
    return refuse('file-unreadable', { file: path });
  }
}

function listOperations(): CommandAnswer {
  const changes = operationNames.filter((name) => contract[name].kind === 'do');
  const schema = (one: z.ZodType, io: 'input' | 'output') => z.toJSONSchema(one, { io, unrepresentable: 'any' });
  const operations = changes.map((name) => ({ operation: name, request: schema(contract[name].request, 'input'), reply: schema(contract[name].reply, 'output') }));
  return done({ operations }, operations.map((one) => `${one.operation}\n${JSON.stringify(one.request, null, 2)}`).join('\n\n'));
}
