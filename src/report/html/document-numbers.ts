import type { Page, Section } from '../page.ts';
import { slug } from './markup.ts';

/** A heading of a document as its contents list it. */
export interface Part {
  /** of the heading */
  id: string;
  /** `3 ` or `3.2 `, with the blank that parts it from the title */
  number: string;
  title: string;
  level: 1 | 2;
}

/** Chapters and their parts in order, numbered, those that close every document at the end. */
export function numberedParts(page: Page): Part[] {
  let chapter = 0;
  let within = 0;
  const part = (section: Section): Part => {
    if (section.within === true && chapter > 0) within += 1;
    else {
      chapter += 1;
      within = 0;
    }
    const level = within > 0 ? 2 : 1;
    const number = `${within > 0 ? `${chapter}.${within}` : chapter} `;
    return { id: slug(section.id), number, title: section.title, level };
  };
  const chapterOf = (id: string, title: string): Part => {
    chapter += 1;
    within = 0;
    return { id, number: `${chapter} `, title, level: 1 };
  };
  const body = page.sections.filter(({ appendix }) => appendix !== true).map(part);
  return [
    ...body,
    ...(page.warnings.length > 0 ? [chapterOf('warnings', 'Warnings')] : []),
    ...(page.cautions.length > 0 ? [chapterOf('cautions', 'Before you go to a bin')] : []),
    chapterOf('signature', 'Signature'),
    ...page.sections.filter(({ appendix }) => appendix === true).map(part),
    chapterOf('made', 'How this report was made'),
    chapterOf('sources', 'Sources'),
  ];
}

/** The section with its figures and tables numbered through the document; `counts` goes on from section to section. */
export function numbered(section: Section, counts: { figure: number; table: number }): Section {
  const table = <T extends { caption: string; rows: readonly unknown[] }>(of: T): T => {
    if (of.rows.length === 0) return of;
    counts.table += 1;
    return { ...of, caption: `Table ${counts.table}. ${of.caption}` };
  };
  return {
    ...section,
    table: section.table === undefined ? undefined : table(section.table),
    figures: section.figures?.map((figure) => {
      counts.figure += 1;
      return { ...figure, title: `Figure ${counts.figure}. ${figure.title}` };
    }),
    tables: section.tables?.map(table),
  };
}
