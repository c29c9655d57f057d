import { WITHHOLDABLE, type Withheld } from '../../../shared-core/handover/withheld-fields.ts';
import { done, refused, wrongUse, type Command } from '../command.ts';

/** Writes a car's history pack. */
export const packCommand: Command = {
  name: 'pack',
  does: 'writes the history pack of a car',
  usage: ['pack CAR --out DIR [--withhold FIELD,...] [--no-papers] [--letter]', '', `FIELD is one of ${WITHHOLDABLE.join(', ')}.`],
  options: { out: { type: 'string' }, withhold: { type: 'string' }, 'no-papers': { type: 'boolean' }, letter: { type: 'boolean' } },
  looks: true,
  run: async (input) => {
    const [car] = input.words;
    const { out, withhold } = input.options;
    if (car === undefined || input.words.length !== 1) return wrongUse('pack takes one car.');
    if (typeof out !== 'string') return wrongUse('pack needs --out, the folder to write into.');
    const fields = typeof withhold === 'string' ? withhold.split(',').filter((field) => field !== '') : [];
    const strange = fields.find((field) => !(WITHHOLDABLE as readonly string[]).includes(field));
    if (strange !== undefined) return wrongUse(`"${strange}" cannot be withheld.`);
    const reply = await (await input.host()).call('pack.write', {
      car,
      out,
      withhold: fields as Withheld[],
      papers: input.options['no-papers'] !== true,
      paperSize: input.options['letter'] === true ? 'LETTER' : 'A4',
    });
    if (!reply.ok) return refused(reply.refusal);
    const { path, files, seal } = reply.value;
    return done(reply.value, `${path}\n${files} files. The seal of the journal, to be kept apart from the pack:\n${seal}`);
  },
};
