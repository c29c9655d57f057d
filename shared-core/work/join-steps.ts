import type { JobStep } from './job-block.ts';

/**
 * Lists of steps made one: what two lists say word for word is said once, for both; what only one says stands between the same
 * neighbours as there. Every step of every list is in it exactly once.
 *
 * @example joinSteps([[chock, raise], [chock, loosen, raise]]) //=> [chock (of both), loosen, raise (of both)]
 */
export function joinSteps(lists: readonly (readonly JobStep[])[]): readonly JobStep[] {
  return lists.reduce<readonly JobStep[]>(joinTwo, []);
}

function joinTwo(joined: readonly JobStep[], list: readonly JobStep[]): readonly JobStep[] {
  const result = [...joined];
  let from = 0;
  for (const one of list) {
    const at = result.findIndex((other, index) => index >= from && saysTheSame(other, one));
    if (at < 0) result.splice(from, 0, one);
    else result[at] = { ...one, of: [...(result[at]?.of ?? []), ...one.of] };
    from = (at < 0 ? from : at) + 1;
  }
  return result;
}

/** Access names differ in spelling at most. Two steps of one task stay two, for a list goes on behind what it has said. */
function saysTheSame(one: JobStep, other: JobStep): boolean {
  const words = ({ step: { access: _access, ...rest } }: JobStep) => JSON.stringify(Object.entries(rest).sort(([a], [b]) => (a < b ? -1 : 1)));
  return words(one) === words(other);
}
