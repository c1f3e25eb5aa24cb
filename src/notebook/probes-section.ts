import type { BinReview } from '../analysis/types.ts';
import { type Estimate, turned } from '../base/estimate.ts';
import { listed } from '../base/listed.ts';
import type { SectionBody } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { offsetPartsTable, offsetsTable, probed, samplesTable } from './probes-tables.ts';
import { ticketsTable } from './probes-tickets.ts';
import { counted, known } from './words.ts';

/** Sensors against scale tickets and hand samples. */
export function agreementSection(bins: readonly BinReview[], units: Units): SectionBody {
  const hand = probed(bins);
  return {
    lead: `${ticketsLead(bins)} ${probesLead(bins, units)}`,
    table: ticketsTable(bins),
    tables: hand.length === 0 ? [] : [offsetsTable(bins, units), offsetPartsTable(bins), samplesTable(bins)],
    notes: [
      ...bins.flatMap((one) => (one.moisture.tickets?.likely ?? []).map((text) => `${one.bin.name}: ${text}`)),
      ...(hand.length === 0
        ? []
        : [
            'A sample is held against the cables of the nearest ring (within 5 ft, 1.5 m) with a sensor within 3 ft (1 m) of height, by readings in still air around its day. A hand meter is taken to keep ±0.5 point (common practice), the same for all samples. An offset that all sensors share cancels in the points removed where both moments are by sensors. Corrected numbers stand beside those as read; all other pages use those as read.',
          ]),
      ...hand.flatMap(({ one, probes }) => [
        ...probes.notes.map((note) => `${one.bin.name}: ${note}`),
        ...probes.sensors.flatMap((sensor) => {
          const more = sensor.beyondOthers;
          return more === null
            ? []
            : [
                `${one.bin.name}: ${sensor.cable}, sensor ${sensor.sensor} reads ${reads(more, units)} beside the other sensors, by ${counted(sensor.pairs, 'hand sample')}: have it looked at.${endSaid(sensor.corrected.end, units)}`,
              ];
        }),
        ...probes.unmatched.map(
          ({ count, why }) => `${one.bin.name}: ${counted(count, 'hand sample')} not used: ${why}.`,
        ),
      ]),
    ],
  };
}

function ticketsLead(bins: readonly BinReview[]): string {
  const moments = bins.flatMap((one) =>
    [one.moisture.tickets?.start, one.moisture.tickets?.end]
      .filter((of) => of !== null && of !== undefined && of.agree !== null)
      .map((of) => ({ name: `${one.bin.name} at the ${of!.moment}`, agree: of!.agree })),
  );
  if (moments.length === 0) return 'No bin’s sensors can be held against scale tickets.';
  const apart = moments.filter((one) => !one.agree).map((one) => one.name);
  return apart.length === 0
    ? `Sensors and scale tickets agree wherever both tell (${counted(moments.length, 'time')}).`
    : `Sensors and scale tickets do not agree in ${listed(apart)}.`;
}

function probesLead(bins: readonly BinReview[], units: Units): string {
  const told = probed(bins).flatMap(({ one, probes }) => {
    const offset = known(probes.bin.offset);
    return offset === null ? [] : [{ name: one.bin.name, offset }];
  });
  if (told.length === 0) return 'No hand samples can be held against the cables.';
  const sure = told.filter(({ offset }) => (offset.interval?.[0] ?? 0) > 0 || (offset.interval?.[1] ?? 0) < 0);
  const unsure = told.filter((one) => !sure.includes(one)).map((one) => one.name);
  const said = sure.map(({ name, offset }) => `${reads(offset, units)} in ${name}`);
  return [
    ...(sure.length === 0 ? [] : [`By hand samples the cables read ${listed(said)}.`]),
    ...(unsure.length === 0 ? [] : [`Hand samples find no sure offset of the cables in ${listed(unsure)}.`]),
  ].join(' ');
}

/** What the bin's moisture at the end would be. */
function endSaid(end: Estimate, units: Units): string {
  return end.value === null ? '' : ` With it corrected the moisture out is ${units.say('moisture', end)}.`;
}

/** `0.4 points (0.0 to 0.9) too dry`. */
function reads(offset: Estimate, units: Units): string {
  const dry = (offset.value ?? 0) < 0;
  const size = dry ? turned(offset) : offset;
  return `${units.say('points', size)} too ${dry ? 'dry' : 'wet'}`;
}
