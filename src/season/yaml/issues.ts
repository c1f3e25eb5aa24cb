import type * as z from 'zod';
import type { SeasonCode } from './codes.ts';
import { Bad, prune } from './draft.ts';
import { choiceText } from './fields.ts';
import { didYouMean, nearest } from './nearest.ts';
import type { YamlPath } from './path-text.ts';
import type { Report } from './report.ts';
import { show } from './show.ts';

type Issue = z.core.$ZodIssue;

/** Tells the issues of the schema as problems, and takes the values they are about out of `data`. */
export function reportIssues(issues: readonly Issue[], data: unknown, report: Report): Bad {
  const bad = tellAll(issues, [], data, report);
  // Values go after all are told: messages show them.
  for (const path of bad) prune(data, path);
  return new Bad(bad);
}

/**
 * A key that is misspelt is told as that, and not as missing besides; checks that ask for it keep still.
 *
 * @returns paths of the values that are wrong
 */
function tellAll(issues: readonly Issue[], base: YamlPath, data: unknown, report: Report): YamlPath[] {
  const meantKeys = issues.flatMap((issue) => misspelt(issue, base, data));
  const told = new Set(meantKeys.map((path) => JSON.stringify(path)));
  const own = issues.filter((issue) => !told.has(JSON.stringify([...base, ...issue.path])));
  return [...meantKeys, ...own.flatMap((issue) => tell(issue, base, data, report))];
}

/** Keys that are not there but stand misspelt. */
function misspelt(issue: Issue, base: YamlPath, data: unknown): YamlPath[] {
  if (issue.code !== 'unrecognized_keys') return [];
  const map = [...base, ...(issue.path as YamlPath)];
  return issue.keys.flatMap((key) => {
    const near = nearest(key, issue.message.split(', '));
    return near === null || valueAt(data, [...map, near]) !== undefined ? [] : [[...map, near]];
  });
}

/** @returns paths of the values that are wrong */
function tell(issue: Issue, base: YamlPath, data: unknown, report: Report): YamlPath[] {
  const path = [...base, ...(issue.path as YamlPath)];
  const value = valueAt(data, path);
  if (issue.code === 'invalid_union') {
    const branch = meant(issue.errors);
    if (branch !== undefined) return tellAll(branch, path, data, report);
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
    // A text has a length too: of it only that it is no list is told.
    if (!Array.isArray(value)) return [path];
    const few = value.length > 0 ? `has too few entries (${value.length})` : 'is an empty list';
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
