import { done, refused, wrongUse, type Command } from '../command.ts';

/** Makes a checked copy of the household. */
export const backupCommand: Command = {
  name: 'backup',
  does: 'makes a checked copy of the whole household',
  usage: ['backup'],
  looks: true,
  run: async (input) => {
    if (input.words.length > 0) return wrongUse('backup takes no further words.');
    const reply = await (await input.host()).call('backup.make', {});
    if (!reply.ok) return refused(reply.refusal);
    return done(reply.value, `${reply.value.entries} entries copied and checked: ${reply.value.folder}`);
  },
};
