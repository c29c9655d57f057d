import type { RequestOf } from '../../../shared-core/contract/contract.ts';
import { sayDate } from '../../../shared-core/result/words/say.ts';
import { done, refused, wrongUse, type Command } from '../command.ts';
import { readJson } from '../read-input.ts';

/** Records work from a file. */
export const recordCommand: Command = {
  name: 'record',
  does: 'records work done, from a file (the schema of record.add)',
  usage: ['record FILE.json', 'record -'],
  run: async (input) => {
    const [file] = input.words;
    if (file === undefined || input.words.length !== 1) return wrongUse('record takes one file, or - for standard input.');
    const read = readJson(file);
    if (!read.ok) return refused(read.refusal);
    const reply = await (await input.host()).call('record.add', read.value as RequestOf<'record.add'>);
    if (!reply.ok) return refused(reply.refusal);
    const { record } = reply.value;
    return done(reply.value, `Recorded: ${record.title}, ${sayDate(record.date)} (${record.id}).`);
  },
};
