import {
  cableTable,
  checkEntries,
  counted,
  coverageFigure,
  defineNotebook,
  fileTable,
  findingEntries,
  findingTable,
  flagTable,
  rejectTable,
  section,
} from '../src/notebook.ts';

export default defineNotebook(
  { id: 'data-quality', title: 'Data quality', question: 'What was read, what was left out, and why?' },
  ({ loaded, units }) => {
    const { findings, totals, rejects, files } = loaded.load;
    const kept = files.reduce((sum, file) => sum + file.kept, 0);
    const flagged = Object.values(totals.flagged).reduce((sum, cells) => sum + cells, 0);
    const gaps = findings.filter((one) => one.kind === 'gap');
    const todo = findings.filter((one) => one.advice !== null);
    return {
      answer:
        totals.cells === 0
          ? 'Can’t tell: no file holds a cell.'
          : `Of ${units.say('count', totals.cells)} cells in ${counted(files.length, 'file')}, ${units.say('count', kept)} (${units.say('share', kept / totals.cells)}) were kept; ${units.say('count', flagged)} flags mark readings that are not believed.`,
      keyNumbers: [
        { label: 'Cells', quantity: 'count', amount: totals.cells },
        { label: 'Kept', quantity: 'count', amount: kept },
        { label: 'Missing', quantity: 'count', amount: totals.missing },
        { label: 'Rejected', quantity: 'count', amount: totals.rejected },
        { label: 'Outside the season', quantity: 'count', amount: totals.outside },
        { label: 'Gaps', quantity: 'count', amount: gaps.length },
      ],
      sections: [
        section('files', 'File by file', () => ({
          lead: 'Every cell is kept, missing, rejected, or outside the season’s bounds. None is dropped in silence.',
          table: fileTable(loaded),
          figures: [coverageFigure(loaded, units)].filter((figure) => figure !== null),
        })),
        section('cables', 'Cable by cable', () => ({
          lead: 'A cable with a large flagged share stands for little of its bin’s grain; its neighbours stand in.',
          table: cableTable(loaded),
        })),
        section('findings', 'What the checks found', () => ({
          lead:
            findings.length === 0
              ? 'The checks found nothing.'
              : `${counted(findings.length, 'finding')}, ${todo.length} of them with something to do.`,
          table: flagTable(loaded),
          entries: findingEntries(findings, units, loaded.season.bins),
          tables: [findingTable(findings, units)],
        })),
        section('rejects', 'What could not be read', () => ({
          lead:
            rejects.length === 0
              ? 'Everything could be read.'
              : `${counted(rejects.length, 'cell or row', 'cells and rows')} could not be read. A rejected cell leaves the rest of its row.`,
          table: rejectTable(loaded),
        })),
        section('rules', 'The rule of each check', () => ({
          lead: 'A reading that can be read but not believed stays in the table with a flag; means and figures leave it out.',
          entries: checkEntries(),
        })),
      ],
      warnings: todo
        .filter((one) => one.kind === 'clock' || one.kind === 'unit' || one.kind === 'silent')
        .map((one) => `${one.text} ${one.advice}`),
      cautions: [],
      sources: [],
    };
  },
);
