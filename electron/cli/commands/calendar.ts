import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { refuse } from '../../../shared-core/result/result.ts';
import { sayOf } from '../../../shared-core/result/words/say.ts';
import { fileRefusal } from '../../host/file-refusal.ts';
import { done, refused, wrongUse, type Command } from '../command.ts';

/** Writes a calendar file of what is due, booked and to be looked at again. */
export const calendarCommand: Command = {
  name: 'calendar',
  does: 'writes a calendar file (iCalendar) of what is due, obligations and sessions',
  usage: ['calendar [--out FILE] [--months N]', '', 'Without --out the file goes to standard output. Take the same file in again later: what it holds replaces itself.'],
  options: { out: { type: 'string' }, months: { type: 'string' } },
  looks: true,
  run: async (input) => {
    if (input.words.length > 0) return wrongUse('calendar takes no further words.');
    const { out, months } = input.options;
    if (typeof months === 'string' && !/^\d{1,3}$/.test(months)) return wrongUse('--months takes a whole number of months.');
    const reply = await (await input.host()).call('calendar.write', typeof months === 'string' ? { months: Number(months) } : {});
    if (!reply.ok) return refused(reply.refusal);
    if (typeof out !== 'string') return done(reply.value, reply.value.text.replace(/\n$/, ''));
    const path = resolve(out);
    try {
      if (existsSync(path) && !readFileSync(path, 'latin1').startsWith('BEGIN:VCALENDAR')) return refused(refuse('calendar-other-file', { path }).refusal);
      // Beside it first: a full disk leaves the earlier calendar whole.
      writeFileSync(`${path}.part`, reply.value.text);
      renameSync(`${path}.part`, path);
    } catch (error) {
      return refused(fileRefusal(error).refusal);
    }
    return done({ ...reply.value, path }, sayOf('counted-events', { n: reply.value.events, path }));
  },
};
