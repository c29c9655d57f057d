import type { Page } from 'playwright-core';
import type { OperationName, ReplyOf, RequestOf } from '../../shared-core/contract/contract.ts';
import type { Result } from '../../shared-core/result/result.ts';

/** Asks the host as the page itself does, by the window's functions or its server. */
export function askHost<Name extends OperationName>(page: Page, name: Name, request: RequestOf<Name>): Promise<Result<ReplyOf<Name>>> {
  return page.evaluate(async ([operation, body]) => {
    const ask = window.trunnion?.operations[operation];
    if (ask !== undefined) return ask(JSON.parse(body));
    const reply = await fetch(`/operations/${operation}`, { method: 'POST', headers: { 'content-type': 'application/json' }, body });
    return (await reply.json()) as Result<unknown>;
  }, [name, JSON.stringify(request)] as const) as Promise<Result<ReplyOf<Name>>>;
}

/** The same; a refusal fails the test. */
export async function mustAsk<Name extends OperationName>(page: Page, name: Name, request: RequestOf<Name>): Promise<ReplyOf<Name>> {
  const result = await askHost(page, name, request);
  if (!result.ok) throw new Error(`refused ${name}: ${JSON.stringify(result.refusal)}`);
  return result.value;
}
