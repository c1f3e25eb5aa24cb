import type { SeasonsBeside } from './analysis/previous/beside-previous.ts';
import type { Swept } from './analysis/strategies/swept.ts';
import type { SeasonReview } from './analysis/types.ts';
import type { BedStore } from './notebook/form/try-ways.ts';
import type { Stated } from './notebook/year-end/cover.ts';
import { type NotebookHead, notebookOf, type PageInput } from './report/define.ts';
import type { PageBody } from './report/page.ts';
import type { LoadedSeason } from './season/loaded.ts';

/** What a notebook gets: the season as loaded, everything the analysis says of it, the door to people's units, and where the page comes from. */
export interface NotebookInput extends PageInput {
  loaded: LoadedSeason;
  review: SeasonReview;
  /** the season before beside this one; left out where none was given */
  beside?: SeasonsBeside;
  /** the sweep that stands beside the season; left out where none was looked for */
  swept?: Swept;
  /** what the year-end report's cover bears in place of what season.yaml says */
  stated?: Stated;
  /** beds fitted before; left out: a notebook that tries ways of its own fits anew */
  beds?: BedStore;
  /** told what a notebook throws, which its page says in a sentence */
  onFailure?: (error: unknown) => void;
}

export type Notebook = ReturnType<typeof defineNotebook>;

/**
 * One notebook = one page. The head asks; the function answers, from top to bottom.
 *
 * @param head    id (stem of the file; `overview` becomes index.html), title, question
 * @param answer  the page as data; may throw: the page then says what failed
 */
export function defineNotebook(head: NotebookHead, answer: (input: NotebookInput) => PageBody) {
  return notebookOf<NotebookInput>(head, answer);
}

// For notebooks written from top to bottom: the form, the verbs for tables, the library that plots.
export * as Plot from '@observablehq/plot';
export * as aq from 'arquero';
export { desc, op } from 'arquero';
export { frontGroups, ranOnTogether } from './analysis/fronts/ran-on-together.ts';
export { type SeasonFront, seasonFront } from './analysis/fronts/season-front.ts';
export type { BinReview, SeasonReview } from './analysis/types.ts';
export { FAN_OFF, FAN_ON, FAN_UNKNOWN } from './analysis/types.ts';
export { type Estimate, withheld } from './base/estimate.ts';
export { listed } from './base/listed.ts';
export { METHODS, methodsOf } from './base/methods/methods.ts';
export { cropOf } from './grain/crops.ts';
export { airflowLead, airflowSection } from './notebook/airflow-section.ts';
export { airflowTable } from './notebook/airflow-tables.ts';
export { allFindings } from './notebook/all-findings.ts';
export { binOrRuleAnswer, binOrRuleKeys, binOrRulePointer } from './notebook/bin-or-rule-answer.ts';
export { againstSection, matrixSection } from './notebook/bin-or-rule-matrix.ts';
export * from './notebook/bin-table.ts';
export * from './notebook/cautions.ts';
export * from './notebook/cheapest.ts';
export { clockDoubts } from './notebook/clock-doubts.ts';
export { comparedAnswer, comparedKeys, groupLead, groupSaid } from './notebook/compare-answer.ts';
export { factorTable, ratioTable, shareTable } from './notebook/compare-factor-tables.ts';
export { comparedFigure } from './notebook/compare-figure.ts';
export { hoursApartNotes } from './notebook/compare-hours-apart.ts';
export { manyNotes } from './notebook/compare-many.ts';
export { differenceLead, ratioEntries, SHARES, untoldNote } from './notebook/compare-statements.ts';
export { besideTable, rankTable, refusedTable, runTable } from './notebook/compare-tables.ts';
export * from './notebook/compare-words.ts';
export { guidanceSection } from './notebook/condition-guidance.ts';
export {
  agesSection,
  besideWeatherSection,
  conditionSources,
  keptSection,
  warmingSection,
} from './notebook/condition-sections.ts';
export { alertSaid, binsEndedWet, binsToSample, conditionAnswer, conditionOf } from './notebook/condition-words.ts';
export * from './notebook/contradicted.ts';
export { coverageFigure } from './notebook/coverage-figure.ts';
export { billSection } from './notebook/energy-bills.ts';
export { demandSection } from './notebook/energy-demand.ts';
export { dryingSection, dryingSources } from './notebook/energy-drying.ts';
export { sourceSection } from './notebook/energy-source.ts';
export { namedTable } from './notebook/estimate-rows.ts';
export { fanClockFigure } from './notebook/fan-clock-figure.ts';
export { fanDays, localSpan } from './notebook/fan-days.ts';
export { fittedNotes, fittedTable } from './notebook/fitted-table.ts';
export { amount, degF } from './notebook/form/amount.ts';
export type { AnyRows } from './notebook/form/any-rows.ts';
export { middle, type NotebookBin } from './notebook/form/bin-numbers.ts';
export type { FigureSpec } from './notebook/form/form-figure.ts';
export type { ColumnSpec, TableSpec } from './notebook/form/form-table.ts';
export { frame } from './notebook/form/frame.ts';
export { type FormHead, type FormNotebook, notebook } from './notebook/form/notebook-form.ts';
export type { OwnStrategy } from './notebook/form/own-strategy.ts';
export type { DataOptions } from './notebook/form/season-data.ts';
export type { OwnFigure, Sheet } from './notebook/form/sheet-types.ts';
export type { TriedBin, TriedWay, Way } from './notebook/form/try-ways.ts';
export { frontsAnswer } from './notebook/front-answer.ts';
export { arrivalFigures } from './notebook/front-figures.ts';
export { frontLead, frontNotes, warmingLead } from './notebook/front-lead.ts';
export { paceTable } from './notebook/front-pace.ts';
export { placedNotes } from './notebook/front-placed.ts';
export { sharedFrontLead, sharedFrontNotes } from './notebook/front-shared.ts';
export * from './notebook/front-tables.ts';
export { givenAwayLead } from './notebook/given-away.ts';
export { grainFrom } from './notebook/grain-from.ts';
export { heaterNotes } from './notebook/heater-notes.ts';
export { heaterRows } from './notebook/heater-rows.ts';
export { errorsSection } from './notebook/layers-errors.ts';
export { layersSection } from './notebook/layers-section.ts';
export { stagesSection } from './notebook/layers-stages.ts';
export * from './notebook/load-tables.ts';
export { constantsSection } from './notebook/methods/constants-section.ts';
export { cropSection } from './notebook/methods/crop-section.ts';
export { formulaSection } from './notebook/methods/formula-section.ts';
export { FORMULAS } from './notebook/methods/formulas.ts';
export { methodEntries } from './notebook/methods/method-entries.ts';
export { methodSources } from './notebook/methods/method-sources.ts';
export { agreementOf } from './notebook/methods/published-check.ts';
export { publishedRecord } from './notebook/methods/published-record.ts';
export { recordSection } from './notebook/methods/record-section.ts';
export { usedFormulas } from './notebook/methods/used-formulas.ts';
export { moistureSection } from './notebook/moisture-bin-section.ts';
export { moistureFrontSection } from './notebook/moisture-front-section.ts';
export * from './notebook/moisture-tables.ts';
export * from './notebook/money-tables.ts';
export { moreFansNotes } from './notebook/more-fans.ts';
export { asGrain, perGrain } from './notebook/per-grain.ts';
export { pointsLead } from './notebook/points-lead.ts';
export { agreementSection } from './notebook/probes-section.ts';
export { ratesSection } from './notebook/rates-section.ts';
export { sectionFigure } from './notebook/section-figure.ts';
export {
  fanHoursTotal,
  sharedHoursNotes,
  sharedRuleNotes,
  totalOfGroups,
  unknownHoursKey,
  unknownHoursTotal,
} from './notebook/shared-fans.ts';
export {
  doubtsSaid,
  MODEL_RANGES,
  nextSeasonLead,
  picksSaid,
  strategiesAnswer,
  strategyKeys,
  trustSaid,
} from './notebook/strategy-answer.ts';
export { columnNotes } from './notebook/strategy-columns.ts';
export { OTHER_PARAMETERS, RULE_SOURCES, strategyEntries } from './notebook/strategy-entries.ts';
export { hangsNotes, hangsTable } from './notebook/strategy-hangs.ts';
export { runsTable, strategyFigure } from './notebook/strategy-runs.ts';
export { aloneNotes, beforeNotes } from './notebook/strategy-saving.ts';
export { strategySweptSection } from './notebook/strategy-swept.ts';
export { adviceEntries, skillTable, strategyTable } from './notebook/strategy-tables.ts';
export { modelSaid, playedBins } from './notebook/strategy-words.ts';
export { strategyYearsSection } from './notebook/strategy-years.ts';
export { isMoved, movedSection } from './notebook/swept-moved.ts';
export { demandOf, tariffTable } from './notebook/tariff-section.ts';
export { unloggedNotes } from './notebook/unlogged-notes.ts';
export { againstTotal, usefulSection } from './notebook/useful-section.ts';
export { waterSection } from './notebook/water-section.ts';
export { weightTables } from './notebook/weight-tables.ts';
export * from './notebook/words.ts';
export { worthSection } from './notebook/worth-section.ts';
export * from './notebook/year-end/sections.ts';
export { monthText } from './report/date-text.ts';
export { arrivalMap } from './report/figures/arrival-map.ts';
export { costByBin } from './report/figures/cost-by-bin.ts';
export { moistureOverTime } from './report/figures/moisture-over-time.ts';
export { moistureProfile } from './report/figures/moisture-profile.ts';
export { monthsByBin } from './report/figures/months-by-bin.ts';
export type * from './report/page.ts';
export { section } from './report/section.ts';
export { Units } from './report/units.ts';
export { CHECK_RULES } from './season/checks/rules.ts';
export type { LoadedSeason } from './season/loaded.ts';
export { sensorSeries } from './tables/sensors.ts';
