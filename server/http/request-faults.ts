import type { z } from 'zod';
import type { ErrorCode } from './contract.ts';

/** Most faults one answer lists. */
const MOST_FAULTS = 100;
/** Longest value a fault repeats, characters. */
const LONGEST_SHOWN = 40;

export interface Fault {
  /** Path of the value in the request: `changes.0.values.width`. */
  readonly field: string;
  readonly message: string;
}

/** A request that is not of the shape its route takes, with every fault located. */
export class RequestFaults extends Error {
  readonly code: ErrorCode;
  readonly faults: readonly Fault[];

  constructor(error: z.ZodError, request: unknown, code: 'bad-request' | 'not-found') {
    const issues = error.issues.flatMap(innermost);
    const faults = issues.slice(0, MOST_FAULTS).flatMap((issue) => faultsOf(issue, request));
    super(faults[0]?.message ?? 'The request is not of the expected shape.');
    this.name = 'RequestFaults';
    this.faults = faults;
    this.code = issues.every(tooLong) ? 'too-large' : code;
  }
}

type Issue = z.core.$ZodIssue;

/** A union's issue stands for those of the option that came nearest. */
function innermost(issue: Issue): Issue[] {
  if (issue.code !== 'invalid_union' || issue.errors.length === 0) return [issue];
  const nearest = issue.errors.reduce((best, errors) => (errors.length < best.length ? errors : best));
  return nearest.flatMap((inner) => innermost({ ...inner, path: [...issue.path, ...inner.path] } as Issue));
}

function tooLong(issue: Issue): boolean {
  return issue.code === 'too_big' && (issue.origin === 'string' || issue.origin === 'array');
}

function faultsOf(issue: Issue, request: unknown): Fault[] {
  const path = issue.path.map(String);
  if (issue.code === 'unrecognized_keys')
    return issue.keys.map((key) => ({
      field: [...path, shown(key)].join('.'),
      message: `“${shown(key)}” is not known here.`,
    }));
  const value = issue.path.reduce<unknown>(
    (inside, key) => (inside as Record<PropertyKey, unknown> | undefined | null)?.[key],
    request,
  );
  const name = nameOf(path);
  return [{ field: path.join('.'), message: `${name} ${sentence(issue, value)}.` }];
}

/** The last named step of a path, as words: "Transfer efficiency" for `values.transferEfficiency`. */
function nameOf(path: readonly string[]): string {
  const last = path.findLast((key) => !/^\d+$/.test(key));
  if (last === undefined) return 'The request';
  const words = last.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function sentence(issue: Issue, value: unknown): string {
  switch (issue.code) {
    case 'invalid_type':
      if (value === undefined) return 'is missing';
      return `must be ${kindOf(issue.expected)}, not ${valueWords(value)}`;
    case 'too_big':
      if (issue.origin === 'string')
        return `has ${String(value).length} characters; at most ${issue.maximum} can be kept`;
      if (issue.origin === 'array')
        return `has ${(value as unknown[]).length} entries; at most ${issue.maximum} can be taken at once`;
      return `must be at most ${issue.maximum}, not ${valueWords(value)}`;
    case 'too_small':
      if (issue.origin === 'array') return `must have at least ${issue.minimum} entries`;
      if (issue.origin === 'string') return 'must not be empty';
      return `must be ${issue.inclusive ? 'at least' : 'more than'} ${issue.minimum}, not ${valueWords(value)}`;
    case 'invalid_value':
      return `must be ${issue.values.map((option) => `“${String(option)}”`).join(' or ')}, not ${valueWords(value)}`;
    case 'invalid_union':
      return value === undefined ? 'is missing' : `is not known: ${valueWords(value)}`;
    default:
      return `${issue.message}, not ${valueWords(value)}`;
  }
}

function kindOf(expected: string): string {
  const kinds: Readonly<Record<string, string>> = {
    string: 'a text',
    number: 'a number',
    int: 'a whole number',
    boolean: 'true or false',
    array: 'a list',
    object: 'an object',
    record: 'an object',
    null: 'null',
  };
  return kinds[expected] ?? expected;
}

function valueWords(value: unknown): string {
  if (typeof value === 'string') return `“${shown(value)}”`;
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : 'so large a number';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object' && value !== null) return 'an object';
  return String(value);
}

function shown(text: string): string {
  return text.length > LONGEST_SHOWN ? `${text.slice(0, LONGEST_SHOWN)}…` : text;
}
