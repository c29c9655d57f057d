import { describe, expect, test } from 'vitest';
import { latestOnly } from '../../../../renderer/ui/plan/latest-only.ts';

/** A host that answers when it is told to. */
function slowHost() {
  const asked: number[] = [];
  const told: string[] = [];
  const waiting: ((reply: string) => void)[] = [];
  const line = latestOnly((request: number) => {
    asked.push(request);
    return new Promise<string>((resolve) => waiting.push(resolve));
  }, (request, reply) => told.push(`${request}: ${reply}`));
  const answer = async (reply: string) => {
    waiting.shift()?.(reply);
    for (let turn = 0; turn < 5; turn += 1) await Promise.resolve();
  };
  return { line, asked, told, answer };
}

describe('asking for one thing at a time', () => {
  test('sends the first at once, and of all that is wanted meanwhile only the last', async () => {
    const { line, asked, told, answer } = slowHost();
    [1, 2, 3, 4].forEach((request) => line.want(request));
    expect(asked).toEqual([1]);
    await answer('one');
    expect(asked).toEqual([1, 4]);
    await answer('four');
    expect(told).toEqual(['4: four']);
  });

  test('drops the answer to what is no longer wanted', async () => {
    const { line, told, answer } = slowHost();
    line.want(1);
    line.forget();
    await answer('one');
    expect(told).toEqual([]);
  });

  test('goes on after it has forgotten, with the new wish alone', async () => {
    const { line, asked, told, answer } = slowHost();
    line.want(1);
    line.forget();
    line.want(2);
    expect(asked).toEqual([1]);
    await answer('one');
    await answer('two');
    line.want(3);
    await answer('three');
    expect([asked, told]).toEqual([[1, 2, 3], ['2: two', '3: three']]);
  });
});
