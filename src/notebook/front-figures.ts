import type { FrontFinding } from '../analysis/fronts/front-finding.ts';
import { ARRIVAL_WITHIN_H } from '../analysis/fronts/front-limits.ts';
import { grainDepthAt } from '../analysis/fronts/grain-depth.ts';
import type { SeasonFront } from '../analysis/fronts/season-front.ts';
import { listed } from '../base/listed.ts';
import { arrivalMap, type MapPanel, type MapSensor } from '../report/figures/arrival-map.ts';
import type { Figure } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { placesSaid } from './front-words.ts';
import { counted, sentence } from './words.ts';

/** Panels that one printed page takes. */
const PANELS = 12;

/** The arrival maps of the bins' main campaigns, a panel a bin; a figure for every twelve. */
export function arrivalFigures(fronts: readonly SeasonFront[], units: Units): Figure[] {
  const drawn = fronts.flatMap((front) => (front.main === null ? [] : [{ front, main: front.main }]));
  const lacking = fronts.filter((one) => one.main === null);
  const left = lacking.map((one) => `${one.review.bin.name}: ${sentence(one.why ?? 'not known')}`).join(' ');
  const figures: Figure[] = [];
  for (let first = 0; first < drawn.length; first += PANELS) {
    const here = drawn.slice(first, first + PANELS);
    const last = first + PANELS >= drawn.length;
    figures.push(
      arrivalMap(
        {
          id: first === 0 ? 'map' : `map-${first / PANELS + 1}`,
          title: titleOf(here.map((one) => one.front)),
          alt: here.map(({ front, main }) => `${front.review.bin.name}: ${altOf(main, units)}`).join(' '),
          kind: 'cooling',
          panels: here.map(({ front, main }) => panelOf(front, main, units)),
          notShown:
            last && lacking.length > 0
              ? `${lacking.length} of ${counted(fronts.length, 'bin')} not shown. ${left}`
              : null,
        },
        units,
      ),
    );
  }
  return figures;
}

function titleOf(fronts: readonly SeasonFront[]): string {
  const held = fronts.filter((one) => one.verdict === 'held').map((one) => one.review.bin.name);
  const through = fronts.filter((one) => one.verdict === 'through').length;
  const of = counted(fronts.length, 'bin');
  if (held.length === 0)
    return through === fronts.length
      ? `Through everywhere in ${fronts.length === 1 ? of : fronts.length === 2 ? 'both bins' : `all ${of}`}`
      : `Through everywhere in ${through} of ${of}`;
  return held.length > 3 ? `Not everywhere in ${held.length} of ${of}` : `Through everywhere but in ${listed(held)}`;
}

function altOf(main: FrontFinding, units: Units): string {
  const { passed, held, seen } = main;
  const hours = passed.flatMap((one) => (one.fanHours === null ? [] : [one.fanHours]));
  const range =
    hours.length === 0
      ? ''
      : `, after ${units.number('hours', Math.min(...hours))} to ${units.say('hours', Math.max(...hours))} of fan running`;
  const not = held.length === 0 ? '' : `; not ${placesSaid(held, units)}`;
  return `the front passed ${passed.length} of ${counted(seen, 'sensor')}${range}${not}.`;
}

function panelOf({ review }: SeasonFront, main: FrontFinding, units: Units): MapPanel {
  const { campaign, slowest } = main;
  const sensors = main.outcomes.flatMap(({ arrival, outcome }): MapSensor[] => {
    if (outcome === 'unseen') return [];
    const { cable, heightM, fanHours, placed } = arrival;
    return [
      {
        cable,
        heightM,
        outcome,
        fanHours,
        placed,
        slowest:
          slowest?.arrival.cable === cable &&
          slowest.arrival.sensor === arrival.sensor &&
          slowest.behindHours > ARRIVAL_WITHIN_H,
      },
    ];
  });
  const result =
    main.throughHours.value === null
      ? `${main.passed.length} of ${main.seen} passed`
      : `through after ${units.say('hours', main.throughHours.value)}`;
  return {
    name: review.bin.name,
    said: `${units.date(campaign.span.fromMs)}: ${result}`,
    depthM: grainDepthAt(review.bin, campaign.span.fromMs),
    cables: review.bin.cables,
    sensors,
  };
}
