import { sayDate } from '../../../shared-core/result/words/say.ts';
import type { ImportView } from '../../../shared-core/views/import-table.ts';
import { done, refused, wrongUse, type Command } from '../command.ts';
import { readText } from '../read-input.ts';

/** Takes in a CSV of readings or of work done: shown first, stored with --keep. */
export const importCommand: Command = {
  name: 'import',
  does: 'previews a CSV of readings or history; --keep stores it',
  usage: ['import FILE.csv [--car CAR] [--keep]', '', 'Columns: date, odometer (or km, mi), unit, car, note; and for work: work, place, by, cost.'],
  options: { car: { type: 'string' }, keep: { type: 'boolean' } },
  run: async (input) => {
    const [file] = input.words;
    if (file === undefined || input.words.length !== 1) return wrongUse('import takes one file.');
    const text = readText(file);
    if (!text.ok) return refused(text.refusal);
    const keep = input.options['keep'] === true;
    const car = input.options['car'];
    const request = { text: text.value, car: typeof car === 'string' ? car : null };
    const host = await input.host();
    const reply = keep ? await host.call('import.keep', request) : await host.call('import.preview', request);
    return reply.ok ? done(reply.value, importText(reply.value, keep)) : refused(reply.refusal);
  },
};

function importText(view: ImportView, kept: boolean): string {
  return [
    `${view.accepted} rows ${kept ? 'stored' : 'would be stored'}, ${view.setAside} set aside, ${view.refused} refused.`,
    ...view.rows.filter((row) => row.state !== 'accepted').map((row) => `  line ${row.line}${row.date === null ? '' : `, ${sayDate(row.date)}`}, "${row.what}": ${row.text}`),
    ...(view.ignored.length === 0 ? [] : [`Columns left out: ${view.ignored.join(', ')}.`]),
    ...(kept ? [] : ['Nothing is stored yet; --keep stores it.']),
  ].join('\n');
}
