import * as v from 'valibot';
import { aircraft } from '../document/schema/aircraft';
import { type Fault, fault, inWords, type Path, valueAt } from './fault';

type Issue = v.GenericIssue;

/** Everything in which a document breaks the schema. */
export function schemaFaults(json: unknown): readonly Fault[] {
  return issuesOf(json).map((issue) => {
    const at = pathOf(issue);
    return fault(json, at, expectedBy(issue), inWords(valueAt(json, at)));
  });
}

function issuesOf(json: unknown): readonly Issue[] {
  const issues = v.safeParse(aircraft, json).issues ?? [];
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
  return v.safeParse(aircraft, filled).issues ?? [];
}

const isMissingKey = (issue: Issue) =>
  issue.type === 'loose_object' && issue.received === 'undefined' && issue.expected?.startsWith('"') === true;

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
