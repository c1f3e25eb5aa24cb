import { errorText } from '../../base/error-text.ts';
import { sourceOf } from '../../base/sources/sources.ts';
import type { Figure, FlowItem, KeyNumber, Section, Size, Table } from '../../report/page.ts';
import type { Units } from '../../report/units.ts';
import { CAUTION_SOURCES, cautionsFor } from '../cautions.ts';
import { MODEL_RANGES } from '../strategy-answer.ts';
import { brokenBins, counted, sentence } from '../words.ts';
import { binNumbers } from './bin-numbers.ts';
import { callSite, siteSaid } from './call-site.ts';
import { figureNumbers } from './figure-numbers.ts';
import { type FigureSpec, formFigure, NothingToDraw } from './form-figure.ts';
import { formTable } from './form-table.ts';
import { type Live, sayLive } from './live-text.ts';
import { uniqueId } from './plain-id.ts';
import { seasonData } from './season-data.ts';
import type { OwnFigure, Said, Sheet, SheetInput, WrittenSheet } from './sheet-types.ts';
import { tryWays } from './try-ways.ts';

interface OpenSection {
  id: string;
  title: string;
  flow: FlowItem[];
  figures: Figure[];
  tables: Table[];
}

/** @param plotted  draws the options of an `OwnFigure` */
export function newSheet(input: SheetInput, plotted: (size: Size, options: object) => string): WrittenSheet {
  const { loaded, review, units, onFailure } = input;
  const bins = review.bins.map((one) => binNumbers(one, units));
  const keyNumbers: KeyNumber[] = [];
  const sections: OpenSection[] = [];
  const warnings = brokenBins(review.bins);
  const sources: string[] = [];
  let answered: string | null = null;

  const open = (): OpenSection => sections.at(-1) ?? begin('What was found');
  const begin = (title: string): OpenSection => {
    const id = uniqueId(title, idsOf(sections));
    const made = { id, title, flow: [], figures: [], tables: [] };
    sections.push(made);
    return made;
  };
  const said = (words: TemplateStringsArray | string, live: readonly Live[]) =>
    typeof words === 'string' ? sayLive(units, [words], []) : sayLive(units, words, live);
  const write = (kind: 'text' | 'note'): Said => {
    return (words, ...live) => {
      const { text, whys } = said(words, live);
      const { flow } = open();
      flow.push(kind === 'text' ? { text } : { note: text });
      for (const why of whys) flow.push({ note: `A dash stands for what is not known: ${why}` });
    };
  };
  const addTable = (section: OpenSection, table: Table) => {
    const own = { ...table, id: uniqueId(table.id, idsOf(section.tables)) };
    section.tables.push(own);
    section.flow.push({ table: own.id });
  };

  const sheet: Sheet = {
    season: loaded.season,
    bins,
    bin(idOrName) {
      const found = bins.find(({ id, name }) => id === idOrName || name === idOrName);
      if (found !== undefined) return found;
      const there = bins.map(({ id, name }) => `${id} (${name})`).join(', ');
      throw new RangeError(`there is no bin "${idOrName}"; there are ${there || 'none'}`);
    },
    data(name, options) {
      const of = options?.bin === undefined ? options : { ...options, bin: sheet.bin(options.bin).id };
      const { table, leftOut } = seasonData(loaded, units, name, of);
      if (leftOut.doubted > 0) {
        const text = `${units.number('count', leftOut.doubted)} of ${counted(leftOut.of, 'value')} in ${name} left out: a check does not believe them, see Data quality.`;
        if (!warnings.includes(text)) warnings.push(text);
      }
      return table;
    },
    answer(words, ...live) {
      const { text, whys } = said(words, live);
      answered = [text, ...whys].join(' ');
    },
    key(label, { of, amount, known }, note) {
      keyNumbers.push({ label, quantity: of, amount, known, note });
    },
    heading(title) {
      begin(title);
    },
    text: write('text'),
    note: write('note'),
    tryWays(of, ways) {
      const bin = typeof of === 'string' ? sheet.bin(of) : of;
      const tried = tryWays(input, bin, ways);
      if (tried.why !== null) warnings.push(`${bin.name}, other ways to run it: withheld. ${tried.why}`);
      else open().flow.push({ note: `${bin.name} by its model: ${tried.model.why} ${MODEL_RANGES}` });
      return tried;
    },
    table(rows, spec = {}) {
      const section = open();
      const { table, cut } = formTable(rows, spec, section.title, units);
      addTable(section, table);
      if (cut > 0) {
        section.flow.push({
          note: `${units.number('count', cut)} more ${cut === 1 ? 'row is' : 'rows are'} not shown.`,
        });
      }
    },
    figure(spec) {
      const section = open();
      const made = figureOrWhy(spec, units, plotted);
      if (typeof made === 'string') return void section.flow.push({ note: made });
      const figure = located(made, callSite(new Error('here').stack), onFailure);
      const own = { ...figure, id: uniqueId(figure.id, idsOf(section.figures)) };
      section.figures.push(own);
      section.flow.push({ figure: own.id });
      const numbers = 'rows' in spec ? figureNumbers(spec, units) : null;
      if (numbers !== null) addTable(section, numbers);
    },
    warning(words, ...live) {
      const { text, whys } = said(words, live);
      warnings.push([text, ...whys].join(' '));
    },
    source(key) {
      sourceOf(key);
      sources.push(key);
    },
    loaded,
    review,
    units,
  };

  return {
    sheet,
    body: () => ({
      answer: answered ?? 'Can’t tell yet: this notebook writes no answer.',
      keyNumbers,
      sections: sections.map(sectionOf),
      warnings,
      cautions: cautionsFor(review.bins.some(({ bin }) => bin.goal === 'condition')),
      sources: [...sources, ...CAUTION_SOURCES],
    }),
    broke(reason) {
      open().flow.push({ failure: reason });
      answered ??= `Can’t tell: the notebook broke before its answer. ${sentence(reason)}`;
    },
  };
}

const idsOf = (of: readonly { id: string }[]): string[] => of.map(({ id }) => id);

/** A section's first paragraph is its lead. */
function sectionOf({ id, title, flow, figures, tables }: OpenSection): Section {
  const [first, ...rest] = flow;
  const lead = first !== undefined && 'text' in first;
  return { id, title, lead: lead ? first.text : '', flow: lead ? rest : flow, figures, tables };
}

function figureOf(
  spec: FigureSpec | OwnFigure | Figure,
  units: Units,
  plotted: (size: Size, options: object) => string,
): Figure {
  if ('draw' in spec) return spec;
  if ('rows' in spec) return formFigure(spec, units);
  const { title, subtitle, alt, id = title, plot } = spec;
  return { id, title, subtitle, alt, legend: [], notShown: null, draw: (size) => plotted(size, plot(size)) };
}

/** The figure, or why there is none: its title is not said, as it may claim what no number shows. */
function figureOrWhy(...of: Parameters<typeof figureOf>): Figure | string {
  try {
    return figureOf(...of);
  } catch (error) {
    if (error instanceof NothingToDraw) return `A figure is not drawn: ${sentence(error.message)}`;
    throw error;
  }
}

/** What throws in drawing, after the notebook is done, says where the figure was asked for. */
function located(figure: Figure, site: ReturnType<typeof callSite>, onFailure: SheetInput['onFailure']): Figure {
  return {
    ...figure,
    draw(size) {
      try {
        return figure.draw(size);
      } catch (error) {
        onFailure?.(error);
        const reason = errorText(error);
        throw new Error(site === null ? reason : `${sentence(reason)} (${siteSaid(site)})`);
      }
    },
  };
}
