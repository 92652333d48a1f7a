import * as v from 'valibot';
import { aircraft } from '../document/schema/aircraft';
import { type Fault, fault, inWords, type Path, shortened, toldFault, valueAt } from './fault';

type Issue = v.GenericIssue;

/** Everything in which a document breaks the schema. */
export const schemaFaults = (json: unknown): readonly Fault[] => faultsBySchema(aircraft, json);

/** Everything in which any JSON breaks a schema; of a schema that allows no other keys, those too. */
export function faultsBySchema(schema: v.GenericSchema, json: unknown): readonly Fault[] {
  return issuesOf(schema, json).map((issue) => {
    const at = pathOf(issue);
    if (!isUnknownKey(issue)) return fault(json, at, expectedBy(issue), inWords(valueAt(json, at)));
    const unknown = `unknown key "${shortened(String(at.at(-1)))}"`;
    return toldFault(json, at.slice(0, -1), `${unknown}.`, 'only keys of the schema', unknown);
  });
}

function issuesOf(schema: v.GenericSchema, json: unknown): readonly Issue[] {
  const issues = v.safeParse(schema, json).issues ?? [];
  const missing = issues.filter(isMissingKey);
  if (missing.length === 0) return issues;
  // The schema says of a missing key only that it is missing. With the key there, and nothing in it,
  // it says what it wanted.
  const filled = structuredClone(json);
  for (const issue of missing) {
    const at = pathOf(issue);
    const owner = valueAt(filled, at.slice(0, -1)) as Record<string, unknown>;
    owner[String(at.at(-1))] = undefined;
  }
  return v.safeParse(schema, filled).issues ?? [];
}

const isObject = ({ type }: Issue) => type === 'loose_object' || type === 'strict_object';

const isUnknownKey = (issue: Issue) => issue.type === 'strict_object' && issue.expected === 'never';

const isMissingKey = (issue: Issue) =>
  isObject(issue) && issue.received === 'undefined' && issue.expected?.startsWith('"') === true;

const pathOf = (issue: Issue): Path => (issue.path ?? []).map(({ key }) => key as string | number);

const plainWords: Readonly<Record<string, string>> = {
  Object: 'an object',
  Array: 'a list',
  number: 'a number',
  string: 'text',
  boolean: 'true or false',
};

function expectedBy({ message, expected }: Issue): string {
  if (message.startsWith('Expected ')) return message.slice('Expected '.length);
  const raw = expected ?? 'something else';
  return plainWords[raw] ?? raw.replace(/^\((.*)\)$/, '$1').replaceAll(' | ', ' or ');
}
