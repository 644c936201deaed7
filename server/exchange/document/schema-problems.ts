import type { z } from 'zod';
import type { Problem } from '../../planning/problem.ts';
import { closestKey } from './closest-key.ts';
import { documentPlace, SETTINGS_ROW, valueAt } from './document-place.ts';
import { documentProblem } from './document-problem.ts';
import { knownKeys } from './known-keys.ts';

type Issue = z.core.$ZodIssue;
/** Characters of the user's text repeated in a message. */
const QUOTED_CHARACTERS = 40;

/** Issues of the document schema as problems, each at its row and field; one for every unknown key. */
export function schemaProblems(issues: readonly Issue[], json: unknown): Problem[] {
  return issues.flatMap((issue) =>
    issue.code === 'unrecognized_keys'
      ? issue.keys.map((key) => unknownKey(issue.path, key, json))
      : [valueProblem(issue, json)],
  );
}

function unknownKey(path: readonly PropertyKey[], key: string, json: unknown): Problem {
  const { at, row } = documentPlace([...path, key], json);
  const keys = knownKeys(path);
  const meant = closestKey(key, keys);
  return documentProblem(
    at,
    `${row} ${row === SETTINGS_ROW ? 'have' : 'has'} the key ${shown(key)}, which this format does not know.`,
    meant !== null
      ? `Write "${meant}" if that was meant, or take the key out.`
      : keys.length > 0
        ? `Take it out, or use one of: ${keys.join(', ')}.`
        : 'Take it out.',
  );
}

function valueProblem(issue: Issue, json: unknown): Problem {
  const { at, row } = documentPlace(issue.path, json);
  const value = valueAt(json, issue.path);
  const what = at.field === null ? row : `${row}: ${at.field}`;
  const due = whatIsDue(issue);
  return value === undefined
    ? documentProblem(at, `${what} is missing.`, `Add it; it must be ${due}.`)
    : documentProblem(at, `${what} is ${shown(value)}, but must be ${due}.`, wayOut(issue, value));
}

function wayOut(issue: Issue, value: unknown): string {
  if (issue.code === 'invalid_value' && typeof value === 'string') {
    const meant = closestKey(
      value,
      issue.values.filter((known) => typeof known === 'string'),
    );
    if (meant !== null) return `Write "${meant}" if that was meant.`;
  }
  if (typeof value === 'number' && !Number.isFinite(value)) return 'Write a number that a shop could mean.';
  return 'Correct it in the file and read it again.';
}

function whatIsDue(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return TYPES[issue.expected] ?? issue.expected;
    case 'invalid_value':
      return issue.values.length === 1
        ? shown(issue.values[0])
        : `one of ${issue.values.map(String).join(', ')}`;
    case 'invalid_union':
      return 'text or a finite number';
    case 'too_small':
      return `${issue.inclusive ? 'at least' : 'above'} ${issue.minimum}${sizeWord(issue.origin)}`;
    case 'too_big':
      return `${issue.inclusive ? 'at most' : 'below'} ${issue.maximum}${sizeWord(issue.origin)}`;
    default:
      return issue.message.replace(/^must (be )?/, (_, be: string | undefined) =>
        be === undefined ? 'such that it must ' : '',
      );
  }
}

const TYPES: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a finite number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object with keys',
};

function sizeWord(origin: string): string {
  if (origin === 'string') return ' characters long';
  return origin === 'array' ? ' entries long' : '';
}

function shown(value: unknown): string {
  if (typeof value === 'string')
    return value.length > QUOTED_CHARACTERS ? `"${value.slice(0, QUOTED_CHARACTERS)}..."` : `"${value}"`;
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object' && value !== null) return 'an object';
  return String(value);
}
