import { type Document, isMap, LineCounter, parseDocument, type YAMLError } from 'yaml';
import { InputError } from '../../base/errors.ts';
import { Anchors } from './anchors.ts';
import { type LeftOpen, leftOpen } from './left-open.ts';
import { keyText, Places } from './places.ts';
import { type Plain, toPlain } from './plain.ts';
import { Problems, SEASON_FILE_NAME } from './report.ts';
import { show } from './show.ts';

export interface SeasonDocument {
  /** the root map, texts as written */
  data: { [key: string]: Plain };
  /** the first key of the file that is not the user's own; an object would put numbers first */
  firstKey: string | null;
  problems: Problems;
}

function firstKeyOf(doc: Document): string | null {
  const keys = isMap(doc.contents) ? doc.contents.items.map((pair) => keyText(pair.key)) : [];
  return keys.find((key) => key !== null && !key.startsWith('x-')) ?? null;
}

function asProblem(error: YAMLError, doc: Document, text: string, places: Places) {
  const gaveUp = places.offset(error.pos[0]);
  const open = leftOpen(error, doc, text);
  const at = open === null ? gaveUp : places.offset(open.offset);
  const message = open === null ? yamlText(error) : openText(open, gaveUp.line);
  return { code: 'SEASON_YAML' as const, file: SEASON_FILE_NAME, ...at, message };
}

function openText({ sign, close }: LeftOpen, line: number): string {
  if (/["']/.test(sign))
    return `this is not YAML: the quote ${sign} opens here and is not closed. Put ${close} where it ends.`;
  // Either nothing closes it, or what does stands at the margin, where the parser no longer takes it for a part.
  return `this is not YAML: the bracket ${sign} opens here and is not closed before line ${line}. Put ${close} where it ends; lines within it must be indented further than its key.`;
}

/** Without the errors that only follow from one before: a second one on a line, and all after an open bracket or quote. */
function telling(errors: readonly YAMLError[]): YAMLError[] {
  const open = errors.findIndex((error) => error.code === 'BAD_INDENT' || error.code === 'MISSING_CHAR');
  return open < 0 ? [...errors] : errors.slice(0, open + 1);
}

function yamlText(error: YAMLError): string {
  if (error.code === 'MULTIPLE_DOCS') return 'a second document starts here (---). Keep one season in the file.';
  if (error.code === 'TAB_AS_INDENT') return 'a tab stands where spaces must indent. Replace it by spaces.';
  const advice =
    error.code === 'BAD_SCALAR_START' ? ' Put the value in quotes.' : ' Check quotes, brackets and indentation here.';
  return `this is not YAML: ${error.message}.${advice}`;
}

/** Parse the text. @throws InputError when it is no YAML map: then nothing further can be told */
export function readDocument(text: string): SeasonDocument {
  const lines = new LineCounter();
  const { doc, anchors } = parse(text, lines);
  const places = new Places(doc, lines, anchors);
  const problems = new Problems(places);
  const told = new Set<number>();
  for (const error of [...telling(doc.errors), ...doc.warnings]) {
    const problem = asProblem(error, doc, text, places);
    if (!told.has(problem.line)) problems.add(problem);
    told.add(problem.line);
  }
  // A broken tree would only bring follow-up errors.
  if (doc.errors.length > 0) throw new InputError(problems.list());
  const data = toPlain(doc.contents, anchors, places, problems);
  if (data !== null && typeof data === 'object' && !Array.isArray(data))
    return { data, firstKey: firstKeyOf(doc), problems };
  const what = data === null ? 'holds comments only' : `holds ${Array.isArray(data) ? 'a list' : show(data)}`;
  const message = `season.yaml ${what}; it must be a map of keys that opens with "format: 1".`;
  problems.add({ code: 'SEASON_TYPE', file: SEASON_FILE_NAME, ...places.node(doc.contents), message });
  throw new InputError(problems.list());
}

function parse(text: string, lineCounter: LineCounter): { doc: Document; anchors: Anchors } {
  try {
    const doc = parseDocument(text, {
      lineCounter,
      version: '1.2',
      schema: 'core',
      prettyErrors: false,
      uniqueKeys: false,
    }) as Document;
    return { doc, anchors: new Anchors(doc) };
  } catch (error) {
    // The parser gives up on nesting thousands deep.
    const message = `season.yaml cannot be parsed (${(error as Error).message}). Check brackets and nesting.`;
    throw new InputError([{ code: 'SEASON_YAML', file: SEASON_FILE_NAME, line: 1, column: 1, message }]);
  }
}
