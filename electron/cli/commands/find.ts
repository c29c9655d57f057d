import { say, sayDate } from '../../../shared-core/result/words/say.ts';
import { amountText } from '../../../shared-core/units/money.ts';
import type { SearchHit, SearchView } from '../../../shared-core/views/search-view.ts';
import { done, refused, wrongUse, type Command } from '../command.ts';

/** What of the household has all the words given: cars, items, records, papers, parts and everything else that has a name. */
export const findCommand: Command = {
  name: 'find',
  does: 'finds what has all these words, dates or amounts: cars, items, records, papers, parts',
  usage: ['find WORDS [--most 20]'],
  options: { most: { type: 'string' } },
  looks: true,
  run: async (input) => {
    if (input.words.length === 0) return wrongUse('find needs at least one word.');
    const most = input.options['most'] === undefined ? 20 : Number(input.options['most']);
    if (!Number.isInteger(most) || most < 1 || most > 100) return wrongUse('--most is a whole number from 1 to 100.');
    const reply = await (await input.host()).call('household.search', { query: input.words.join(' '), most });
    return reply.ok ? done(reply.value, findText(reply.value)) : refused(reply.refusal);
  },
};

function findText(view: SearchView): string {
  if (view.total === 0) return say({ key: 'search-nothing', values: { query: view.nowhere.length > 0 ? view.nowhere.join(', ') : view.query } });
  const near = view.near.map(({ typed, words }) => say({ key: 'search-near', values: { typed, words: words.join(', ') } }));
  return [...near, ...view.groups.flatMap((group) => ['', `${say({ key: `search-kind-${group.kind}`, values: {} })} (${group.total})`, ...group.hits.map((hit) => `  ${hitText(hit, view.currency)}`)])].join('\n').trim();
}

function hitText({ name, car, kind, date, where }: SearchHit, currency: string): string {
  const of = car === null || kind === 'car' ? '' : `${car.name}: `;
  return `${of}${name}${date === null ? '' : `, ${sayDate(date)}`}${where === null ? '' : `  [${where.field}: ${whereText(where, currency)}]`}`;
}

function whereText({ text, before, after, date, minor }: NonNullable<SearchHit['where']>, currency: string): string {
  if (date !== null) return sayDate(date);
  if (minor !== null) return `${amountText(minor, currency)} ${currency}`;
  return `${before ? '… ' : ''}${text}${after ? ' …' : ''}`;
}
