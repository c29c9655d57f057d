import { resolve } from 'node:path';
import { done, refused, wrongUse, type Command } from '../command.ts';

/** Takes in a car with the history pack of its earlier keeper. */
export const takeInCommand: Command = {
  name: 'take-in',
  does: 'takes in a car with the history pack of its earlier keeper',
  usage: ['take-in PACK [--seal TEXT] [--sample-pack]', '', 'The pack is checked first, and is kept byte for byte. --sample-pack: a pack of the sample may come in too.'],
  options: { seal: { type: 'string' }, 'sample-pack': { type: 'boolean' } },
  run: async (input) => {
    const [pack] = input.words;
    if (pack === undefined || input.words.length !== 1) return wrongUse('take-in takes one pack.');
    const seal = input.options['seal'];
    const reply = await (await input.host()).call('pack.take-in', { pack: resolve(pack), seal: typeof seal === 'string' ? seal : null, sample: input.options['sample-pack'] === true });
    if (!reply.ok) return refused(reply.refusal);
    const { car, name, records, readings, left, notes } = reply.value;
    const rest = left === 0 ? [] : [`${left} entries are read in the pack alone.`];
    return done(reply.value, [`${car.name} is taken in from ${name}: ${records} records and ${readings} readings of its earlier keeper.`, ...rest, ...notes].join('\n'));
  },
};
