import { type Slowest, slowestOf } from '../analysis/fronts/front-finding.ts';
import type { MoistureArrival, MoistureFront } from '../analysis/fronts/moisture-front-types.ts';
import type { BinReview } from '../analysis/types.ts';
import { listed } from '../base/listed.ts';
import type { Cell, SectionBody, Table } from '../report/page.ts';
import type { Units } from '../report/units.ts';
import { placesSaid } from './front-words.ts';
import { capital, counted, sentence } from './words.ts';

const NOT_WORKED_OUT = 'This bin could not be worked out.';

const whyNone = ({ fronts, failure }: BinReview) =>
  failure !== null ? NOT_WORKED_OUT : (fronts.moisture?.why ?? fronts.why ?? 'Not known.');

/** Fronts of drying and conditioning by the moisture sensors, in one section. */
export function moistureFrontSection(bins: readonly BinReview[], units: Units): SectionBody {
  return {
    lead: moistureFrontLead(bins, units),
    table: frontTable(bins, units),
    tables: [arrivalTable(bins)],
    notes: [
      'A sensor is passed when its moisture has gone half of the way from what it was to what the grain behind the front came to, and stays there for days. Days with still air count by their still-air readings; with the fan on a reading leans to the passing air, so half-way is taken as unsure by 0.4 point (sd), and the 90 % interval holds the fan hours in which the moisture was that near to it. Fan hours since grain was in the bin.',
    ],
  };
}

function moistureFrontLead(bins: readonly BinReview[], units: Units): string {
  const told = bins.flatMap(({ bin, fronts }) => {
    const front = fronts.moisture?.front ?? null;
    return front === null ? [] : [{ name: bin.name, front }];
  });
  if (told.length === 0) {
    const reasons = new Set(bins.map(whyNone));
    const [reason] = reasons;
    return reasons.size === 1 && reason !== undefined
      ? `No drying front can be told of: ${sentence(reason.charAt(0).toLowerCase() + reason.slice(1))}`
      : 'No drying front can be told of in any bin; the table says why.';
  }
  const said = told.map(({ name, front }) => {
    const { passed, seen, missed } = counts(front);
    if (missed.length === 0) return `the ${front.kind} front passed every sensor that can tell in ${name}`;
    const last = lastPassed(front);
    const where = last === null ? '' : `, last ${placesSaid([last], units, 'cable')}`;
    return `in ${name} the ${front.kind} front passed ${passed.length} of ${counted(seen, 'sensor')}${where}`;
  });
  const short = told.some(({ front }) => counts(front).missed.length > 0);
  // Clauses with commas of their own are parted by semicolons.
  const all = short && said.length > 1 ? `${said.slice(0, -1).join('; ')}; and ${said[said.length - 1]}` : listed(said);
  const beyond = short ? ' Grain beyond it had not gone half of the way when the fans stopped.' : '';
  return `${capital(all)}.${beyond}`;
}

function counts({ arrivals }: MoistureFront) {
  const passed = arrivals.filter((one) => one.arrivedMs !== null);
  const seen = arrivals.filter((one) => one.unseen !== true).length;
  const missed = arrivals.filter((one) => one.why?.includes('did not get there') === true);
  return { passed, seen, missed };
}

/** Of the sensors passed, the one that the front came to last. */
function lastPassed({ arrivals }: MoistureFront): MoistureArrival | null {
  const dated = arrivals.filter((one) => one.arrivedMs !== null);
  return dated.sort((a, b) => (b.arrivedMs ?? 0) - (a.arrivedMs ?? 0))[0] ?? null;
}

function frontTable(bins: readonly BinReview[], units: Units): Table {
  return {
    id: 'moisture-fronts',
    caption: 'The drying (or wetting) front of each bin',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'kind', label: 'Front', quantity: null },
      { key: 'hours', label: 'Fan hours', quantity: 'hours', known: 'measured' },
      { key: 'ahead', label: 'Ahead', quantity: 'moisture', known: 'measured' },
      { key: 'behind', label: 'Behind', quantity: 'moisture', known: 'measured' },
      { key: 'passed', label: 'Sensors passed', quantity: null },
      { key: 'last', label: 'Last one passed after', quantity: 'hours' },
      { key: 'where', label: 'Where', quantity: null },
      { key: 'slowest', label: 'Slowest for its height', quantity: null },
    ],
    rows: bins.map((review): Record<string, Cell> => {
      const front = review.fronts.moisture?.front ?? null;
      if (front === null) {
        const none = { value: null, why: whyNone(review) };
        const keys = ['kind', 'hours', 'ahead', 'behind', 'passed', 'last', 'where', 'slowest'];
        return { bin: review.bin.name, ...Object.fromEntries(keys.map((key) => [key, none])) };
      }
      const { passed, seen } = counts(front);
      const last = lastPassed(front);
      const slow = slowestOf(front.arrivals.filter((one) => one.fanHours !== null));
      const undated = { value: null, why: 'No arrival can be dated in fan hours.' };
      return {
        bin: review.bin.name,
        kind: front.kind,
        hours: front.fanHours,
        ahead: front.aheadWb,
        behind: front.behindWb,
        passed: `${passed.length} of ${seen}`,
        last:
          last === null || last.fanHours === null
            ? undated
            : { value: last.fanHours, interval: last.fanHoursInterval, why: null },
        where: last === null ? undated : placesSaid([last], units),
        slowest:
          slow === null
            ? { value: null, why: 'One cable, or none that came behind the others.' }
            : slowSaid(slow, units),
      };
    }),
    empty: 'there is no bin in season.yaml.',
  };
}

/** A lag below half of the width of the sensor's own interval is none that can be told. */
function slowSaid({ arrival, behindHours }: Slowest<MoistureArrival>, units: Units): string {
  const [low, high] = arrival.fanHoursInterval ?? [0, 0];
  return behindHours <= (high - low) / 2
    ? 'within the intervals'
    : `${placesSaid([arrival], units)}, +${units.say('hours', behindHours)}`;
}

function arrivalTable(bins: readonly BinReview[]): Table {
  return {
    id: 'moisture-arrivals',
    caption: 'Every sensor of these bins',
    folded: 'on screen',
    columns: [
      { key: 'bin', label: 'Bin', quantity: null },
      { key: 'sensor', label: 'Cable and sensor', quantity: null },
      { key: 'height', label: 'Height', quantity: 'length', known: 'stated' },
      { key: 'arrived', label: 'Passed', quantity: 'moment' },
      { key: 'hours', label: 'Fan hours', quantity: 'hours' },
      { key: 'ahead', label: 'Ahead', quantity: 'moisture', known: 'measured' },
      { key: 'end', label: 'At the end', quantity: 'moisture', known: 'measured' },
    ],
    rows: bins.flatMap(({ bin, fronts }) =>
      (fronts.moisture?.front?.arrivals ?? []).map((one): Record<string, Cell> => {
        const none = { value: null, why: one.why ?? 'Not known.' };
        return {
          bin: bin.name,
          sensor: `${one.cable} ${one.sensor}`,
          height: one.heightM,
          arrived: one.arrivedMs ?? none,
          hours: one.fanHours === null ? none : { value: one.fanHours, interval: one.fanHoursInterval, why: null },
          ahead: one.aheadWb ?? none,
          end: one.endWb ?? none,
        };
      }),
    ),
    empty: 'no front of moisture was seen.',
  };
}
