import { z } from 'zod';
import { contract, operationNames, type OperationName } from '../../shared-core/contract/contract.ts';
import type { Dice } from '../shared-core/parts/order-seeds.ts';

/** What no one types by mistake, and some of what everyone does. */
const HOSTILE: readonly unknown[] = [
  '', ' ', '\u0000', '\u202e', '\ud800', 'a\nb', '💥'.repeat(50), 'x'.repeat(100_000), '../../../etc/passwd', '..\\..\\key', 'CON', "'; DROP TABLE journal; --", '=1+1', '<script>1</script>',
  '__proto__', 'constructor', '2026-02-30', '9999-12-31', '0000-00-00', '-0', '1e999', 0, -1, -0, 0.1, 1e308, -1e308, 9007199254740993, 2 ** 31, true, false, null, [], {}, [[]], [null], ['x', 1],
  { __proto__: null, toString: 1 }, JSON.parse('{"__proto__":{"ok":true}}'), Array.from({ length: 3000 }, (_, i) => i), nested(300),
];
/** What gets past the first check where a text is wanted, so that the second is reached. */
const TEXTS = ['pip', 'pip', 'r1', 'a', 'p1', 'Pip', 'Brake fluid', 'GBP', 'a'.repeat(64), '2022-11-25', '2024-06-01', '2025-06-01', '2026-01-01', '2027-01-01'] as const;
const NUMBERS = [0, 1, 1, 2, 12, 36, 100, 9500, 20_000] as const;

function nested(depth: number): unknown {
  return depth === 0 ? 1 : { a: [nested(depth - 1)] };
}

/** A call as a hostile page might send it: an operation of the contract, and the text of a body. */
export interface HostileCall {
  readonly operation: OperationName;
  readonly body: string;
}

/** One hostile call: broken JSON, a value of any sort, or a request of the operation's own shape, some of it wrong. */
export function hostileCall(dice: Dice): HostileCall {
  const operation = dice.one(operationNames);
  if (dice.chance(8)) return { operation, body: brokenJson(dice) };
  return { operation, body: JSON.stringify(dice.chance(15) ? dice.one(HOSTILE) : hostileObject(dice, operation)) };
}

function brokenJson(dice: Dice): string {
  return dice.one(['{', '', '[1,', '{"a":}', '\u0000', 'NaN', "{'a':1}", '{"a":1}{"b":2}', '['.repeat(5000)]);
}

function hostileObject(dice: Dice, operation: OperationName): unknown {
  const schema = requestSchema(operation);
  const given = valueFor(dice, schema, 6);
  // What takes no fields does something large when it is asked rightly; here it is always asked wrongly.
  const asks = Object.keys(schema.properties ?? {}).length === 0 || dice.chance(5);
  return asks && typeof given === 'object' ? { ...given, [dice.one(['more', 'id', '__proto__x', ''])]: dice.one(HOSTILE) } : given;
}

interface FieldSchema {
  readonly type?: string;
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly anyOf?: readonly FieldSchema[];
  readonly oneOf?: readonly FieldSchema[];
  readonly properties?: Readonly<Record<string, FieldSchema>>;
  readonly required?: readonly string[];
  readonly items?: FieldSchema;
}

const schemas = new Map<OperationName, FieldSchema>();

function requestSchema(operation: OperationName): FieldSchema {
  const known = schemas.get(operation) ?? (z.toJSONSchema(contract[operation].request, { io: 'input', unrepresentable: 'any' }) as FieldSchema);
  schemas.set(operation, known);
  return known;
}

/** A value of the sort that is wanted; so many times in a hundred, at any depth, a hostile one. */
function valueFor(dice: Dice, schema: FieldSchema, hostility: number): unknown {
  if (dice.chance(hostility)) return dice.one(HOSTILE);
  if (schema.const !== undefined) return schema.const;
  if (schema.enum !== undefined) return dice.one(schema.enum);
  const choices = schema.anyOf ?? schema.oneOf;
  if (choices !== undefined) return valueFor(dice, dice.one(choices), hostility);
  if (schema.type === 'object') return objectFor(dice, schema, hostility);
  if (schema.type === 'array') return Array.from({ length: dice.whole(0, 2) }, () => valueFor(dice, schema.items ?? {}, hostility));
  if (schema.type === 'boolean') return dice.chance(50);
  if (schema.type === 'null') return null;
  return schema.type === 'integer' || schema.type === 'number' ? dice.one(NUMBERS) : dice.one(TEXTS);
}

function objectFor(dice: Dice, { properties = {}, required = [] }: FieldSchema, hostility: number): Record<string, unknown> {
  const wanted = Object.entries(properties).filter(([name]) => dice.chance(required.includes(name) ? 98 : 40));
  return Object.fromEntries(wanted.map(([name, field]) => [name, valueFor(dice, field, hostility)]));
}
