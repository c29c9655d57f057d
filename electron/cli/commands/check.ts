import { resolve } from 'node:path';
import { refuse } from '../../../shared-core/result/result.ts';
import { packCheckView, type PackCheckView } from '../../../shared-core/views/pack-check-view.ts';
import { checkPackAt } from '../../pack/check-pack.ts';
import { done, refused, wrongUse, type Command } from '../command.ts';

/** Verifies a history pack; it needs no household. */
export const checkCommand: Command = {
  name: 'check',
  does: 'checks a history pack (ZIP or unpacked folder) and names each fault',
  usage: ['check PACK [--seal TEXT]'],
  options: { seal: { type: 'string' } },
  run: async (input) => {
    const [pack] = input.words;
    if (pack === undefined || input.words.length !== 1) return wrongUse('check takes one pack.');
    const seal = input.options['seal'];
    const report = await checkPackAt(resolve(pack), typeof seal === 'string' ? seal : null);
    if (!report.ok) return refused(report.refusal);
    const view = packCheckView(report.value);
    const text = checkText(view);
    if (view.sound) return done(view, text);
    return { kind: 'refused', refusal: refuse('pack-not-sound', { count: view.faults.length, first: text }).refusal, json: view };
  },
};

function checkText(view: PackCheckView): string {
  return [
    view.sound ? `${view.name ?? 'The pack'} is sound: ${view.rows} entries proven.` : `${view.name ?? 'The pack'} is not sound.`,
    ...view.faults.map((fault) => `  ${fault.code}: ${fault.text}`),
    ...view.warnings.map((warning) => `  remark: ${warning}`),
    ...view.notes.map((note) => `  ${note}`),
    ...view.withheldIn.map(({ path, fields }) => `  withheld${path === null ? '' : ` in ${path}`}: ${fields.join(', ')}`),
  ].join('\n');
}
