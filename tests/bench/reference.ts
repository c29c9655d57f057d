/**
 * Milliseconds of the processor for a fixed integer sum, the best of three: a measure of this machine at this moment, to which the
 * times of the benches are ratios.
 */
export function referenceMilliseconds(): number {
  return Math.min(...[1, 2, 3].map(runOnce));
}

function runOnce(): number {
  const used = process.cpuUsage();
  let state = 1;
  for (let step = 0; step < 100_000_000; step += 1) state = (Math.imul(state, 1_664_525) + 1_013_904_223) | 0;
  if (state === 0) throw new Error('the reference came to nothing');
  return process.cpuUsage(used).user / 1000;
}
