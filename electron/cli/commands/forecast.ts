import { localDate } from '../../../shared-core/calendar/local-date.ts';
import { bareForecast, type BareForecast, type BareForecastOptions } from '../../../shared-core/fleet/bare-forecast.ts';
import { parseOdometerLog } from '../../../shared-core/fleet/odometer-log.ts';
import { ok, type Result } from '../../../shared-core/result/result.ts';
import { sayDate, sayNumber } from '../../../shared-core/result/words/say.ts';
import { done, refused, wrongUse, type Command, type CommandInput } from '../command.ts';
import { readText } from '../read-input.ts';

/** The bare forecaster on a `date,km` file. */
export const forecastCommand: Command = {
  name: 'forecast',
  does: 'forecasts from a file of date,km',
  usage: ['forecast FILE.csv --on DATE --add-km N [--declared-km-a-year N] [--laid-up 11,12,1,2,3] [--no-season] [--south]'],
  options: { 'add-km': { type: 'string' }, 'declared-km-a-year': { type: 'string' }, 'laid-up': { type: 'string' }, 'no-season': { type: 'boolean' }, south: { type: 'boolean' } },
  run: (input) => {
    const [file] = input.words;
    if (file === undefined || input.words.length !== 1) return wrongUse('forecast takes one file.');
    if (input.on === undefined || input.options['add-km'] === undefined) return wrongUse('forecast needs --on and --add-km.');
    const options = optionsOf(input);
    if ('why' in options) return wrongUse(options.why);
    if (!options.given.ok) return refused(options.given.refusal);
    const text = readText(file);
    if (!text.ok) return refused(text.refusal);
    const log = parseOdometerLog(text.value);
    if (!log.ok) return refused(log.refusal);
    const forecast = bareForecast(log.value, options.given.value);
    if (!forecast.ok) return refused(forecast.refusal);
    const { answer, prior } = forecast.value;
    const remark = prior === 'declared-set-aside' ? '\nThe declared distance does not fit the readings and was set aside.' : '';
    return done(answer, forecastText(answer) + remark);
  },
};

function optionsOf(input: CommandInput): { readonly given: Result<BareForecastOptions> } | { readonly why: string } {
  const number = (name: string) => (input.options[name] === undefined ? null : Number(input.options[name]));
  const addKm = number('add-km') ?? Number.NaN;
  const declaredKmAYear = number('declared-km-a-year');
  const laidUp = typeof input.options['laid-up'] === 'string' ? input.options['laid-up'].split(',').map(Number) : [];
  if (!Number.isFinite(addKm)) return { why: '--add-km is a number of kilometres.' };
  if (declaredKmAYear !== null && !Number.isFinite(declaredKmAYear)) return { why: '--declared-km-a-year is a number.' };
  if (laidUp.some((month) => !Number.isInteger(month) || month < 1 || month > 12)) return { why: '--laid-up is a list of months, 1 to 12.' };
  const on = localDate(input.on ?? '');
  if (!on.ok) return { given: on };
  const hemisphere = input.options['no-season'] === true ? 'none' : input.options['south'] === true ? 'south' : 'north';
  return { given: ok({ on: on.value, addKm, declaredKmAYear, laidUp, hemisphere }) };
}

function forecastText(answer: BareForecast): string {
  const { due, odometer } = answer;
  const date = (value: string | null) => (value === null ? 'not within five years' : sayDate(value));
  return [
    `Last reading ${sayNumber(answer.lastReading.km)} km on ${sayDate(answer.lastReading.date)}; about ${answer.ratePerSeasonDay.toFixed(1)} km a day.`,
    `Odometer ${sayNumber(Math.round(odometer.low))} to ${sayNumber(Math.round(odometer.high))} km, likely ${sayNumber(Math.round(odometer.likely))}.`,
    `Reached: earliest ${date(due.earliest)}, likely ${date(due.likely)}, latest ${date(due.latest)}.`,
    ...answer.setAside.map((one) => `Set aside: ${sayNumber(one.km)} km on ${sayDate(one.date)} (${one.code}).`),
  ].join('\n');
}
