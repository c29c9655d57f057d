import { z } from 'zod';
import { addMonths } from '../calendar/add-months.ts';
import { newEntry } from '../journal/entry-kind.ts';
import { change } from '../journal/operation.ts';
import { idSchema } from '../result/id.ts';
import { longText } from '../result/plain-text.ts';
import { ok, refuse } from '../result/result.ts';
import { say } from '../result/words/say.ts';
import { begunSession } from '../work/begin-work.ts';
import { findMade, stepRefSchema } from '../work/doing.ts';
import { carOfStep } from '../work/read-at-step.ts';
import { noteObservation } from './note-observation.ts';
import { observationSchema } from './observation.ts';

const shape = observationSchema.shape;

/** Months until what was found is looked at again, unless the keeper gives a day (ours, no source); what is unsafe is looked at before the car is driven. */
const MONTHS_TO_RECHECK = { watch: 3, soon: 1, unsafe: 0 } as const;

/** Notes something found while working on a car: an observation with a day to look again. Without words it says at which step; closing ties it to the record. */
export const noteFind = change({
  request: z.strictObject({ session: idSchema, at: stepRefSchema, stepText: longText(300).default(''), severity: shape.severity, text: longText(300).default(''), recheckOn: shape.recheckOn.unwrap().optional(), papers: shape.papers.default([]) }),
  reply: z.object({ observation: observationSchema }),
  decide: (facts, { session: id, at, stepText, severity, text, recheckOn, papers }, moment) => {
    const session = begunSession(facts, id, [at]);
    if (!session.ok) return session;
    const car = carOfStep(facts, at);
    if (!car.ok) return car;
    if (recheckOn !== undefined && recheckOn < moment.today) return refuse('recheck-before-record', { date: recheckOn }, ['recheckOn']);
    const words = text.trim() === '' ? wordsOfStep(stepText) : text;
    const noted = noteObservation.decide(facts, { car: car.value, text: words, severity, recheckOn: recheckOn ?? addMonths(moment.today, MONTHS_TO_RECHECK[severity]), record: null, papers }, moment);
    if (!noted.ok) return noted;
    const { observation } = noted.value.reply;
    return ok({ entries: [...noted.value.entries, newEntry(findMade, { id: observation.id, session: id, car: car.value, at })], reply: { observation } });
  },
});

function wordsOfStep(step: string): string {
  return step === '' ? say({ key: 'found-something', values: {} }) : say({ key: 'found-at-step', values: { step } }).slice(0, 300).trim();
}
