import type { WearSeriesView } from '../../../shared-core/views/wear-view.ts';
import type { HouseholdWords } from '../../ui/household-words.ts';
import { tell } from '../../ui/words/tell.ts';
import { valueText } from './value-words.ts';

/** What a chart shows, for who does not see it. */
export function chartWords(series: WearSeriesView, words: HouseholdWords): string {
  const counting = series.points.filter((point) => point.part === 'counts').map((point) => point.measurement);
  const [first, last] = [counting[0], counting.at(-1)];
  if (first === undefined || last === undefined) return '';
  const says = tell('wear-chart.says', { n: counting.length, from: valueText(first.typed), fromMonth: words.month(first.date), to: valueText(last.typed), toMonth: words.month(last.date) });
  const limit = series.limits[0];
  if (limit === undefined) return says;
  const said = valueText(limit.limit);
  return `${says} ${limit.verdict === 'wears' && limit.likely !== null ? tell('wear-chart.reaches', { limit: said, month: words.month(limit.likely) }) : tell('wear-chart.limit', { limit: said })}`;
}
