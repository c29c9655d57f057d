import { basename } from 'node:path';
import { backtest, type Backtest, type BacktestFile } from '../../../shared-core/fleet/backtest.ts';
import { parseOdometerLog } from '../../../shared-core/fleet/odometer-log.ts';
import { refuse } from '../../../shared-core/result/result.ts';
import { sayRefusal } from '../../../shared-core/result/words/say.ts';
import { done, refused, wrongUse, type Command } from '../command.ts';
import { readText } from '../read-input.ts';

/** How good the forecaster would have been on whole logs. */
export const backtestCommand: Command = {
  name: 'backtest',
  does: 'measures the forecaster on files of date,km',
  usage: ['backtest FILE.csv... [--spacing DAYS]'],
  options: { spacing: { type: 'string' } },
  run: (input) => {
    if (input.words.length === 0) return wrongUse('backtest takes one file or more.');
    const spacing = input.options['spacing'] === undefined ? undefined : Number(input.options['spacing']);
    if (spacing !== undefined && (!Number.isInteger(spacing) || spacing < 1)) return wrongUse('--spacing is a whole number of days.');
    const files: BacktestFile[] = [];
    for (const word of input.words) {
      const text = readText(word);
      if (!text.ok) return refused(text.refusal);
      const log = parseOdometerLog(text.value);
      if (!log.ok) return refused(refuse('file-refused', { file: word, why: sayRefusal(log.refusal) }).refusal);
      files.push({ name: basename(word), readings: log.value });
    }
    const measured = backtest(files, spacing);
    return measured.ok ? done(measured.value, backtestText(measured.value)) : refused(measured.refusal);
  },
};

function backtestText(measured: Backtest): string {
  const { lastTwo, allHistory } = measured.baselines;
  return [
    `${measured.files} files, ${measured.origins} origins`,
    ...measured.distance.map((one) => `  ${one.days} days ahead: error ${percent(one.wMAPE)} % of distance, 80 % window held ${percent(one.coverage80)} % (${one.n} forecasts)`),
    ...measured.due.map((one, at) => `  ${one.addKm} km: due date off by ${days(one.meanAbsDays)} days on average, window held ${percent(one.coverage80)} % (${one.n}); last two readings ${days(lastTwo.due[at]?.meanAbsDays)}, whole history ${days(allHistory.due[at]?.meanAbsDays)}`),
  ].join('\n');
}

/** A share in percent; a dash where nothing could be measured. */
function percent(share: number | null): string {
  return share === null ? '-' : (100 * share).toFixed(1);
}

function days(count: number | null | undefined): string {
  return count == null ? '-' : count.toFixed(1);
}
