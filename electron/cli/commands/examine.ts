import { done, refused, wrongUse, type Command } from '../command.ts';

/** Checks database, papers and journal by replay. */
export const examineCommand: Command = {
  name: 'examine',
  does: 'checks database, papers and journal by replay',
  usage: ['examine'],
  looks: true,
  run: async (input) => {
    if (input.words.length > 0) return wrongUse('examine takes no further words.');
    const reply = await (await input.host()).call('household.examine', {});
    if (!reply.ok) return refused(reply.refusal);
    const { entries, papers, faults } = reply.value;
    const [first] = faults;
    if (first === undefined) return done(reply.value, `${entries} entries and ${papers} papers examined: all as it should be.`);
    const lines = faults.map((fault) => `${fault.where} ${fault.what}`).join('; ');
    return { kind: 'refused', refusal: { code: 'not-sound', values: { count: faults.length, first: lines } }, json: reply.value };
  },
};
