import { type CaseChoices, hourCases, type KnownHours } from './hour-cases.ts';
import type { Aim } from './hour-effects.ts';
import { type JudgedCases, judge } from './judged-hours.ts';

/** The hours judged by the usual choice and by each other. @param grain  [pieces]; 0 while the bin held no grain */
export function judgeCases(known: KnownHours, choices: CaseChoices, aim: Aim, grain: Uint8Array): JudgedCases {
  const { main, changed } = hourCases(known, choices);
  const told = {
    moisture: main.airWb.some((value, i) => !Number.isNaN(value + main.grainWb[i])),
    temperature: main.plateauC.some((value, i) => !Number.isNaN(value + main.grainC[i])),
  };
  const of = (one: typeof main) => judge(one, aim, grain, told);
  return { main: of(main), changed: changed.map((cases) => cases.map(of)), known: told };
}
