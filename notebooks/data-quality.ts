import {
  allFindings,
  cableTable,
  capital,
  checkEntries,
  counted,
  coverageFigure,
  defineNotebook,
  fileTable,
  findingEntries,
  findingTable,
  flagTable,
  isToDo,
  mostlyFor,
  notBelieved,
  rejectTable,
  section,
} from '../src/notebook.ts';

export default defineNotebook(
  { id: 'data-quality', title: 'Data quality', question: 'What was read, what was left out, and why?' },
  ({ loaded, review, units }) => {
    const { totals, rejects, files } = loaded.load;
    const findings = allFindings(loaded, review);
    const kept = files.reduce((sum, file) => sum + file.kept, 0);
    const doubted = notBelieved(loaded);
    const gaps = findings.filter((one) => one.kind === 'gap');
    const todo = findings.filter(isToDo);
    return {
      answer:
        kept === 0
          ? 'Can’t tell: no file holds a value.'
          : `${capital(counted(files.length, 'file'))} gave ${units.say('count', kept)} values; ${units.say('count', doubted)} of them (${units.say('share', doubted / kept)}) are not believed and left out${mostlyFor(loaded, units)}, and ${totals.rejected === 0 ? 'all others could' : `${units.say('count', totals.rejected)} more could not`} be read.`,
      keyNumbers: [
        { label: 'Values read', quantity: 'count', amount: kept },
        { label: 'Not believed', quantity: 'count', amount: doubted },
        { label: 'Could not be read', quantity: 'count', amount: totals.rejected },
        { label: 'Left empty in the files', quantity: 'count', amount: totals.missing },
        { label: 'Outside the season', quantity: 'count', amount: totals.outside },
        { label: 'Gaps in the logs', quantity: 'count', amount: gaps.length },
      ],
      sections: [
        section('files', 'File by file', () => ({
          lead: 'Every cell of a file is kept, empty, not to be read, or outside the season; none is dropped in silence.',
          table: fileTable(loaded),
          figures: [coverageFigure(loaded, units)].filter((figure) => figure !== null),
        })),
        section('cables', 'Cable by cable', () => ({
          lead: 'Where much of a cable is not believed, its neighbours stand for its grain.',
          table: cableTable(loaded),
        })),
        section('findings', 'What the checks found', () => ({
          lead:
            findings.length === 0
              ? 'The checks found nothing.'
              : `${capital(counted(findings.length, 'finding'))}; ${todo.length === 0 ? 'none asks' : `${todo.length} of them ${todo.length === 1 ? 'asks' : 'ask'}`} for something to be done.`,
          table: flagTable(loaded),
          entries: findingEntries(findings, units, loaded.season.bins),
          tables: [findingTable(findings)],
        })),
        section('rejects', 'What could not be read', () => ({
          lead:
            rejects.length === 0
              ? 'Everything could be read.'
              : `${capital(counted(rejects.length, 'cell or row', 'cells and rows'))} could not be read; the rest of a row with a bad cell is kept.`,
          table: rejectTable(loaded),
        })),
        section('rules', 'The rule of each check', () => ({
          lead: 'A value that can be read but not believed stays in the data with a mark that says why; means and figures leave it out.',
          entries: checkEntries(),
        })),
      ],
      warnings: todo
        .filter(
          (one) => one.kind === 'clock' || one.kind === 'unit' || one.kind === 'silent' || one.kind === 'contradicted',
        )
        .map((one) => `${one.text} ${one.advice}`),
      cautions: [],
      sources: [],
    };
  },
);
