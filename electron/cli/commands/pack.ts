import { localDate, type LocalDate } from '../../../shared-core/calendar/local-date.ts';
import { WITHHOLDABLE, type Withheld } from '../../../shared-core/handover/withheld-fields.ts';
import { ok, type Result } from '../../../shared-core/result/result.ts';
import { done, refused, wrongUse, type Command } from '../command.ts';

/** Writes a car's history pack. */
export const packCommand: Command = {
  name: 'pack',
  does: 'writes the history pack of a car',
  usage: [
    'pack CAR --out DIR [--from DATE] [--to DATE] [--withhold FIELD,...] [--papers ID,... | --no-papers] [--cover ID] [--letter] [--name-originals] [--with-previous | --without-previous]',
    '',
    '--from and --to: what is dated outside is left out, and the pack says so. ID is the SHA-256 of a paper.',
    '--name-originals: copies in which parts are blacked out name their papers by digest, which proves more and may let one try for what is black.',
    '--with-previous: packs of earlier keepers go along whole, with what is withheld here. --without-previous: they are left out, and what came with them is not proven.',
    `FIELD is one of ${WITHHOLDABLE.join(', ')}.`,
  ],
  options: {
    out: { type: 'string' }, withhold: { type: 'string' }, 'no-papers': { type: 'boolean' }, 'name-originals': { type: 'boolean' }, 'with-previous': { type: 'boolean' }, 'without-previous': { type: 'boolean' }, letter: { type: 'boolean' },
    from: { type: 'string' }, to: { type: 'string' }, papers: { type: 'string' }, cover: { type: 'string' },
  },
  looks: true,
  run: async (input) => {
    const [car] = input.words;
    const { out, withhold } = input.options;
    if (car === undefined || input.words.length !== 1) return wrongUse('pack takes one car.');
    if (typeof out !== 'string') return wrongUse('pack needs --out, the folder to write into.');
    const fields = listed(withhold) ?? [];
    const { from, to, papers, cover } = input.options;
    const strange = fields.find((field) => !(WITHHOLDABLE as readonly string[]).includes(field));
    if (strange !== undefined) return wrongUse(`"${strange}" cannot be withheld.`);
    const [first, last] = [dayOf(from), dayOf(to)];
    if (!first.ok) return refused(first.refusal);
    if (!last.ok) return refused(last.refusal);
    const [withPrevious, withoutPrevious] = [input.options['with-previous'] === true, input.options['without-previous'] === true];
    if (withPrevious && withoutPrevious) return wrongUse('pack takes --with-previous or --without-previous, not both.');
    const reply = await (await input.host()).call('pack.write', {
      car,
      out,
      withhold: fields as Withheld[],
      papers: input.options['no-papers'] !== true,
      onlyPapers: listed(papers),
      cover: typeof cover === 'string' ? cover : null,
      nameOriginals: input.options['name-originals'] === true,
      previous: withPrevious ? 'whole' : withoutPrevious ? 'left-out' : null,
      period: { from: first.value, to: last.value },
      paperSize: input.options['letter'] === true ? 'LETTER' : 'A4',
    });
    if (!reply.ok) return refused(reply.refusal);
    const { path, files, seal, notes } = reply.value;
    return done(reply.value, `${path}\n${notes.map((note) => `${note}\n`).join('')}${files} files. The seal of the journal, to be kept apart from the pack:\n${seal}`);
  },
};

/** Words of a list with commas; null where the option was not given. */
function listed(option: string | boolean | undefined): string[] | null {
  return typeof option === 'string' ? option.split(',').filter((word) => word !== '') : null;
}

/** A date of an option; null where it was not given. */
function dayOf(option: string | boolean | undefined): Result<LocalDate | null> {
  return typeof option === 'string' ? localDate(option) : ok(null);
}
