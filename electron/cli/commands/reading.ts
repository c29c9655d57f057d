import { localDate } from '../../../shared-core/calendar/local-date.ts';
import { say, sayDate, sayNumber } from '../../../shared-core/result/words/say.ts';
import type { RecordReadingReply } from '../../../shared-core/fleet/recorded-reading.ts';
import { done, refused, wrongUse, type Command } from '../command.ts';

/** Records a reading; a doubtful one is kept, set aside and asked about. */
export const readingCommand: Command = {
  name: 'reading',
  does: 'records a reading of the odometer',
  usage: ['reading CAR VALUE [--unit km|mi] [--date DATE]', '    --sure       the value is right although it looks wrong', '    --replaced   it is the first value of a new instrument', '    --later      with --replaced: what was read after that day is of the new one too'],
  options: { unit: { type: 'string' }, date: { type: 'string' }, sure: { type: 'boolean' }, replaced: { type: 'boolean' }, later: { type: 'boolean' } },
  run: async (input) => {
    const [car, typed] = input.words;
    if (car === undefined || typed === undefined || input.words.length !== 2) return wrongUse('reading takes a car and a value.');
    const plain = typed.replace(/\s/g, '');
    const value = Number(plain);
    if (!/^-?\d+(\.\d+)?$/.test(plain)) return wrongUse(`"${typed}" is not a number.`);
    const { unit, date } = input.options;
    if (unit !== undefined && unit !== 'km' && unit !== 'mi') return wrongUse('--unit is km or mi.');
    const on = typeof date === 'string' ? localDate(date) : null;
    if (on?.ok === false) return refused(on.refusal);
    const reply = await (await input.host()).call('reading.record', {
      car,
      value,
      ...(unit === undefined ? {} : { unit }),
      ...(on === null ? {} : { date: on.value }),
      sure: input.options['sure'] === true,
      replaced: input.options['replaced'] === true ? { laterOfNew: input.options['later'] === true } : null,
    });
    if (!reply.ok) return refused(reply.refusal);
    return done(reply.value, readingText(reply.value));
  },
};

function readingText({ reading, state, code, repairs }: RecordReadingReply): string {
  const what = `${sayNumber(reading.typed.value)} ${reading.typed.unit} on ${sayDate(reading.date)}`;
  if (state === 'accepted') return `Recorded: ${what}.`;
  const meant = repairs.length === 0 ? 'Look again.' : `Was it ${repairs.map(sayNumber).join(' or ')}?`;
  return `Kept and set aside: ${what}. ${say({ key: `doubt-${code ?? ''}`, values: {} })} ${meant}\nIf it is right, say so with --sure; if the instrument is new, with --replaced.`;
}
