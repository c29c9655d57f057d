import { basename } from 'node:path';
import { importColumns } from '../../../shared-core/views/import/import-choices.ts';
import { done, refused, wrongUse, type Command, type CommandAnswer, type CommandInput } from '../command.ts';
import { choiceOptions, choicesOf } from '../import-options.ts';
import { readBytes } from '../read-input.ts';
import { importsText, keptText, previewText } from '../say-import.ts';

/** Takes in a CSV of readings or of work done: shown first, stored with --keep, withdrawn whole. */
export const importCommand: Command = {
  name: 'import',
  does: 'previews a CSV of readings or history; --keep stores it',
  usage: [
    'import FILE.csv [--car CAR] [--columns date=1,reading=3] [--date-order dmy] [--unit mi] [--keep]',
    'import --list',
    'import --withdraw ID',
    '',
    `--columns       which column holds what, by number or none: ${importColumns.join(', ')}`,
    '--date-order    ymd, dmy or mdy',
    '--unit          km or mi, of readings that name none',
    '--decimal-mark  . or , in numbers that can be read both ways',
    "--delimiter     ',' ';' '|' or tab",
    '--header, --no-header   whether the first row is a head',
    '--items         "TEXT=ITEM;TEXT=": the item that a text of the work means, or none',
    '--keep          stores what the preview shows; refused while a question is open',
    '--again         stores a file although an import of the very same file stands',
    '--list          the imports that stand',
    '--withdraw      takes a whole import back',
    'FILE may be - for standard input.',
  ],
  options: { ...choiceOptions, keep: { type: 'boolean' }, again: { type: 'boolean' }, list: { type: 'boolean' }, withdraw: { type: 'string' } },
  run: (input) => {
    if (input.options['list'] === true || input.options['withdraw'] !== undefined) return input.words.length === 0 ? standing(input) : wrongUse('import takes either a file, or --list, or --withdraw.');
    const [file] = input.words;
    return file === undefined || input.words.length !== 1 ? wrongUse('import takes one file.') : takeIn(input, file);
  },
};

async function takeIn(input: CommandInput, file: string): Promise<CommandAnswer> {
  const choices = choicesOf(input.options);
  if ('why' in choices) return wrongUse(choices.why);
  const bytes = readBytes(file);
  if (!bytes.ok) return refused(bytes.refusal);
  const request = { ...choices, base64: bytes.value.toString('base64'), name: file === '-' ? null : basename(file) };
  const host = await input.host();
  if (input.options['keep'] !== true) {
    const reply = await host.call('import.preview', request);
    return reply.ok ? done(reply.value, previewText(reply.value)) : refused(reply.refusal);
  }
  const reply = await host.call('import.keep', { ...request, again: input.options['again'] === true });
  return reply.ok ? done(reply.value, keptText(reply.value, reply.value.import)) : refused(reply.refusal);
}

async function standing(input: CommandInput): Promise<CommandAnswer> {
  const id = input.options['withdraw'];
  const host = await input.host();
  if (typeof id !== 'string') {
    const reply = await host.call('import.list', {});
    return reply.ok ? done(reply.value, importsText(reply.value.imports)) : refused(reply.refusal);
  }
  const reply = await host.call('import.withdraw', { id });
  return reply.ok ? done(reply.value, `Withdrawn: ${reply.value.withdrawn} entries.`) : refused(reply.refusal);
}
