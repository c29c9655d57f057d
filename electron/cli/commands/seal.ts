import { sealProves, sealProvesNot } from '../../../shared-core/views/seal-view.ts';
import { done, refused, wrongUse, type Command } from '../command.ts';

/** Shows the head of the journal and the seals given, or gives one. */
export const sealCommand: Command = {
  name: 'seal',
  does: 'shows the seals given over the journal, or gives one',
  usage: ['seal [--give]', '', '--give: seals the journal as it stands. From then on none of its entries can be undone; they can still be amended.'],
  options: { give: { type: 'boolean' } },
  looks: true,
  run: async (input) => {
    if (input.words.length > 0) return wrongUse('seal takes no further words.');
    const host = await input.host();
    if (input.options['give'] !== true) {
      const shown = await host.call('seal.show', {});
      if (!shown.ok) return refused(shown.refusal);
      const { entries, root, keyFingerprint, sample, given } = shown.value;
      return done(shown.value, [...sampleLine(sample), `${entries} entries, root ${root}`, `Key ${keyFingerprint}`, given.length === 0 ? 'No seal has been given.' : 'Seals given:', ...given.map((one) => `\n${one.at}, over ${one.entries} entries:\n${one.text}`)].join('\n'));
    }
    const reply = await host.call('seal.give', {});
    return reply.ok ? done(reply.value, [`Over ${reply.value.entries} entries:`, reply.value.text, '', ...sealProves(), ...sealProvesNot()].join('\n')) : refused(reply.refusal);
  },
};

function sampleLine(sample: boolean): string[] {
  return sample ? ['This is the invented household; its seals prove nothing.'] : [];
}
