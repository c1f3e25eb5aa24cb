import type { Bin } from '../../season/season.ts';
import type { Aim } from './hour-effects.ts';
import { sumOf } from './hour-sums.ts';
import type { Judged } from './judged-hours.ts';
import type { SeasonHours } from './known-hours.ts';
import { HOUR_CLASSES } from './useful-hours-types.ts';

/** What a reader must know of a bin's hours, whole sentences; degrees in both systems. */
export function usefulNotes(
  bin: Bin,
  { on, air, moistureFrom, silent, outdoor, untimedHours, known: { grainC } }: SeasonHours,
  main: Judged,
  aim: Aim,
): string[] {
  const show = (value: number) => String(Number(value.toPrecision(3)));
  const hoursOf = (name: (typeof HOUR_CLASSES)[number]) =>
    on.hours.reduce((sum, hours, i) => sum + (main.classes[i] === HOUR_CLASSES.indexOf(name) ? hours : 0), 0);
  const notes: string[] = [];
  const fromWeather = on.hours.reduce((sum, hours, i) => sum + (air.main.fromPlenum[i] === 1 ? 0 : hours), 0);
  const { warmingK, warmingFrom } = air.main;
  const outdoorKnown = outdoor.tempC.some((value) => !Number.isNaN(value));
  if (!air.warmingKnown) {
    notes.push('The heater warms the air by an amount that no plenum reading tells, so those hours cannot be classed.');
  } else if (warmingFrom === 'stated' && fromWeather > 0 && outdoorKnown) {
    notes.push(
      `No plenum readings tell the fan’s warming, so the air is the outdoor air warmed by ${show(warmingK)} °C (${show(1.8 * warmingK)} °F), from published figures; the intervals span ${show(air.offK)} °C (${show(1.8 * air.offK)} °F) less and more.`,
    );
  } else if (warmingFrom === 'plenum' && fromWeather >= 0.5 && outdoorKnown) {
    notes.push(
      `${show(fromWeather)} h had no plenum reading: their air is the outdoor air warmed by ${show(warmingK)} °C (${show(1.8 * warmingK)} °F), as in the hours that had one.`,
    );
  }
  if (bin.air === 'down') {
    notes.push(
      'The air is drawn down: it meets the grain at the top, as it is outdoors and not yet warmed by the fan.',
    );
  }
  if (moistureFrom === 'ends') {
    notes.push(
      'No cable tells moistures: the grain is taken to go from its moisture at the start to that at the end evenly over the fan hours.',
    );
  }
  if (moistureFrom === null) {
    notes.push('The grain’s moisture is not known, so hours are named by temperature alone.');
  }
  if (grainC.length > 0 && grainC.every(Number.isNaN)) {
    notes.push(
      'The grain’s temperature is not known, so hours are named by moisture alone; one that did next to nothing to it may have cooled or warmed the grain.',
    );
  }
  if (aim.goal !== 'hold' && (aim.goal === 'cool' ? aim.tempC : aim.moistureWb) === null) {
    notes.push(
      'Without a stated target nobody can say when the goal was reached: all of the season is judged as before it.',
    );
  }
  if (untimedHours >= 0.5) {
    notes.push(
      `Of ${show(untimedHours)} h a meter that was read once a day or more seldom tells how many, not when: no air can be put to them.`,
    );
  }
  const unknown = hoursOf('unknown');
  if (unknown >= 0.5)
    notes.push(
      `${show(unknown)} h could not be classed: air or grain is not known; the upper ends for and against the goal include them.`,
    );
  const quiet = sumOf(silent.hours);
  if (quiet >= 0.5)
    notes.push(
      `The fan log is silent for ${show(quiet)} h: the upper ends include those of them in which a fan that ran would have counted, and those that could not be classed.`,
    );
  const empty = hoursOf('empty');
  if (empty >= 0.5) notes.push(`${show(empty)} h ran while the bin held no grain.`);
  return notes;
}
