import type * as z from 'zod';
import type { SeasonCode } from './codes.ts';
import { Bad, prune } from './draft.ts';
import { choiceText } from './fields.ts';
import { didYouMean } from './nearest.ts';
import type { YamlPath } from './path-text.ts';
import type { Report } from './report.ts';
import { show } from './show.ts';

type Issue = z.core.$ZodIssue;

/** Tells the issues of the schema as problems, and takes the values they are about out of `data`. */
export function reportIssues(issues: readonly Issue[], data: unknown, report: Report): Bad {
  const bad = issues.flatMap((issue) => tell(issue, [], data, report));
  // Values go after all are told: messages show them.
  for (const path of bad) prune(data, path);
  return new Bad(bad);
}

/** @returns paths of the values that are wrong */
function tell(issue: Issue, base: YamlPath, data: unknown, report: Report): YamlPath[] {
  const path = [...base, ...(issue.path as YamlPath)];
  const value = valueAt(data, path);
  if (issue.code === 'invalid_union') {
    const branch = meant(issue.errors);
    if (branch !== undefined) return branch.flatMap((inner) => tell(inner, path, data, report));
  }
  if (issue.code === 'unrecognized_keys') {
    const known = issue.message.split(', ');
    return issue.keys.map((key) => {
      report('SEASON_KEY', [...path, key], unknownKey(key, known), 'key');
      return [...path, key];
    });
  }
  if (issue.code === 'custom') report((issue.params as { code: SeasonCode }).code, path, issue.message);
  else if (value === undefined) report('SEASON_MISSING', path, `is missing; it takes ${issue.message}.`, 'parent');
  else if (value === null) {
    report('SEASON_TYPE', path, `is empty; it takes ${issue.message}. Give it a value, or delete the key.`);
  } else if (issue.code === 'too_small') {
    const few = Array.isArray(value) && value.length > 0 ? `has too few entries (${value.length})` : 'is an empty list';
    report('SEASON_MISSING', path, `${few}; it takes ${issue.message}.`);
  } else if (issue.code === 'invalid_value' && typeof value === 'string') {
    report('SEASON_CHOICE', path, choiceText(value, issue.values.map(String)));
  } else report('SEASON_TYPE', path, `is ${show(value)}; it takes ${issue.message}.`);
  return [path];
}

/** Of a union the branch that the form of the value (text, list or map) chose. */
function meant(branches: readonly (readonly Issue[])[]): readonly Issue[] | undefined {
  return branches.find((branch) => !branch.some((one) => one.code === 'invalid_type' && one.path.length === 0));
}

export function unknownKey(key: string, known: readonly string[]): string {
  const own = `Keys of your own start with x-.`;
  return `is not a known key.${didYouMean(key, known)} Known here: ${known.join(', ')}. ${own}`;
}

function valueAt(data: unknown, path: YamlPath): unknown {
  let value = data;
  for (const step of path) {
    if (value === null || typeof value !== 'object') return undefined;
    value = Object.hasOwn(value, step) ? (value as Record<string | number, unknown>)[step] : undefined;
  }
  return value;
}
