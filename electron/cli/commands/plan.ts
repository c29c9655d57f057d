import { assert } from '../../../shared-core/result/assert.ts';
import { verifyPlan } from '../../../shared-core/sessions/plan-verify.ts';
import { readPlanInstance } from '../../../shared-core/sessions/read-plan-instance.ts';
import { solvePlanInThread } from '../../solver/plan-thread.ts';
import { done, refused, wrongUse, type Command, type CommandAnswer, type CommandInput } from '../command.ts';
import { planInstanceText } from '../plan-instance-text.ts';
import { planText } from '../plan-text.ts';
import { readJson } from '../read-input.ts';

/** Proposes sessions: of the household, or of a bare instance. */
export const planCommand: Command = {
  name: 'plan',
  does: 'proposes sessions: what to do together, when and where',
  usage: ['plan [--horizon DAYS]', 'plan --instance FILE.json'],
  options: { instance: { type: 'string' }, horizon: { type: 'string' } },
  looks: true,
  run: async (input) => {
    if (input.words.length > 0) return wrongUse('plan takes no further words.');
    const { instance, horizon } = input.options;
    if (typeof instance !== 'string') return planHousehold(input);
    return horizon === undefined ? planInstance(instance) : wrongUse('--horizon is of the household; an instance has its own days.');
  },
};

async function planHousehold(input: CommandInput): Promise<CommandAnswer> {
  const { horizon } = input.options;
  const days = horizon === undefined ? null : Number(horizon);
  if (days !== null && !Number.isInteger(days)) return wrongUse('--horizon is a whole number of days.');
  const reply = await (await input.host()).call('plan.propose', { horizonDays: days });
  return reply.ok ? done(reply.value, planText(reply.value)) : refused(reply.refusal);
}

async function planInstance(file: string): Promise<CommandAnswer> {
  const read = readJson(file);
  if (!read.ok) return refused(read.refusal);
  const instance = readPlanInstance(read.value);
  if (!instance.ok) return refused(instance.refusal);
  const answer = await solvePlanInThread(instance.value);
  if (!answer.ok) return refused(answer.refusal);
  const faults = verifyPlan(instance.value, answer.value);
  assert(faults.length === 0, `a plan that its verifier refuses: ${JSON.stringify(faults[0])}`);
  return done(answer.value, planInstanceText(answer.value));
}
