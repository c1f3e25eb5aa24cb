// What the year-end report is made of, offered to notebooks through src/notebook.ts.
export { adviceSection } from './advice-section.ts';
export { besideSection } from './beside-section.ts';
export { binSheet, MANY_BINS } from './bin-sheet.ts';
export { type Stated, yearEndCover } from './cover.ts';
export { energySections } from './energy-sections.ts';
export { farmSection } from './farm-section.ts';
export { measuresOf } from './measures-of.ts';
export { methodSection, modelSection, reportSources } from './method-section.ts';
export { mendSection, qualitySection } from './quality-section.ts';
export { summarySection, yearEndAnswer, yearEndKeys } from './summary-section.ts';
export { valueSection } from './value-section.ts';
