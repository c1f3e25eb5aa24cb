import type { BinReview } from '../analysis/types.ts';
import type { Estimate } from '../base/estimate.ts';
import type { Cell, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { conditionOf, localDay, placeSaid } from './condition-words.ts';

const DAY_MS = 86_400_000;

/** How far each bin's grain has aged. */
export function agesTable(bins: readonly BinReview[], units: Units): Table {
  return {
    id: 'ages',
    caption: 'Storage time used and dry matter lost, by the rule for each crop',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'used', label: 'Storage time used, mean', quantity: 'storage time used' },
      { key: 'worst', label: 'At the place that used most', quantity: 'storage time used', marked: true },
      { key: 'place', label: 'That place', quantity: null },
      { key: 'loss', label: 'Dry matter lost, mean', quantity: 'dry matter lost' },
      { key: 'worstLoss', label: 'Lost at that place', quantity: 'dry matter lost' },
    ],
    rows: bins.map((one) => {
      const { age } = conditionOf(one);
      return {
        bin: one.bin.name,
        used: age.lifeUsed,
        worst: age.worstLifeUsed,
        place: age.worst === null ? missing(age.lifeUsed) : placeSaid(age.worst, units),
        loss: age.loss,
        worstLoss: age.worstLoss,
      };
    }),
    empty: 'there is no bin in season.yaml.',
  };
}

const missing = ({ why }: Estimate): Cell => ({ value: null, why: why ?? 'Not known.' });

/** What was watched for warming, and the places found. */
export function warmingTables(bins: readonly BinReview[], units: Units): Table[] {
  const found = bins.flatMap((one) => conditionOf(one).warming.found.map((place) => ({ one, place })));
  return [
    {
      id: 'watched',
      caption: 'Rest of the fan in which warming could be seen',
      columns: [
        { key: 'bin', label: 'Bin', quantity: null },
        { key: 'places', label: 'Places judged', quantity: 'count' },
        { key: 'of', label: 'Of', quantity: 'count' },
        { key: 'days', label: 'Days watched, at the place seen longest', quantity: 'days', known: 'measured' },
        { key: 'found', label: 'Places that warmed by themselves', quantity: 'count' },
      ],
      rows: bins.map((one) => {
        const { warming } = conditionOf(one);
        const told = (cell: Cell): Cell => (warming.why === null ? cell : { value: null, why: warming.why });
        return {
          bin: one.bin.name,
          places: told(warming.judged),
          of: told(warming.of),
          days: told(warming.days),
          found: told(warming.found.length),
        };
      }),
      empty: 'there is no bin in season.yaml.',
    },
    ...(found.length === 0
      ? []
      : [
          {
            id: 'warmed',
            caption: 'Places that warmed by themselves',
            columns: [
              { key: 'bin', label: 'Bin', quantity: null },
              { key: 'place', label: 'Place', quantity: null },
              { key: 'from', label: 'From', quantity: null },
              { key: 'to', label: 'To', quantity: null },
              { key: 'rise', label: 'Rise', quantity: 'temperature difference' as const, known: 'measured' as const },
              {
                key: 'above',
                label: 'Above all near it',
                quantity: 'temperature difference' as const,
                known: 'measured' as const,
              },
            ],
            rows: found.map(({ one, place }) => ({
              bin: one.bin.name,
              place: placeSaid(place, units),
              from: localDay(units, place.span.fromMs),
              to: localDay(units, place.span.toMs - DAY_MS),
              rise: place.riseK,
              above: place.aboveK,
            })),
          },
        ]),
  ];
}

/** The grain beside the weather: how much warmer, how cold it got, how long it was warm enough for insects, how often the roof could be wet. */
export function weatherTable(bins: readonly BinReview[]): Table {
  return {
    id: 'beside-weather',
    caption: 'Warmth of the grain, insects and a wet roof',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'warm', label: 'Days 11 °C (20 °F) above outdoors', quantity: 'days' },
      { key: 'most', label: 'The most above outdoors', quantity: 'temperature difference' },
      { key: 'coldest', label: 'Coldest week, mean', quantity: 'temperature' },
      { key: 'since', label: 'Warmed since', quantity: 'temperature difference' },
      { key: 'insects', label: 'Days of grain at 13 to 35 °C (55 to 95 °F)', quantity: 'days' },
      { key: 'best', label: 'Of these at 25 to 33 °C (77 to 91 °F)', quantity: 'days' },
      { key: 'roof', label: 'Fan hours that could wet the roof', quantity: 'hours' },
    ],
    rows: bins.map((one) => {
      const { outdoors, coldest, warmedSinceK, insects, roofHours } = conditionOf(one);
      return {
        bin: one.bin.name,
        warm: outdoors.days,
        most: outdoors.mostK,
        coldest,
        since: warmedSinceK,
        insects: insects.develop,
        best: insects.best,
        roof: roofHours,
      };
    }),
    empty: 'there is no bin in season.yaml.',
  };
}

/** Every place of a bin, from the floor up. */
export function placesTable(one: BinReview): Table {
  const { age } = conditionOf(one);
  return {
    id: 'places',
    caption: 'Every place of the grain',
    folded: 'on screen',
    columns: [
      { key: 'cable', label: 'Cable', quantity: null },
      { key: 'sensor', label: 'Sensor', quantity: 'count' },
      { key: 'height', label: 'Height', quantity: 'length', known: 'stated' },
      { key: 'share', label: 'Stands for', quantity: 'share', known: 'from stated' },
      { key: 'used', label: 'Storage time used', quantity: 'storage time used', marked: true },
      { key: 'loss', label: 'Dry matter lost', quantity: 'dry matter lost' },
    ],
    rows: age.places.map((place) => ({
      cable: place.cable,
      sensor: place.sensor,
      height: place.heightM,
      share: place.share,
      used: place.lifeUsed,
      loss: place.loss,
    })),
    empty: age.lifeUsed.why ?? 'no place is told.',
  };
}
