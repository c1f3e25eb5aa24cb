import { aboutArrival, type FrontFinding, type HeldSensor } from '../analysis/fronts/front-finding.ts';
import { ARRIVAL_WITHIN_H } from '../analysis/fronts/front-limits.ts';
import type { SeasonFront } from '../analysis/fronts/season-front.ts';
import { listed } from '../base/listed.ts';
import type { Units } from '../report/units.ts';
import { PACE_NOTE } from './front-pace.ts';
import { leftC, placesSaid } from './front-words.ts';
import { counted, sentence } from './words.ts';

/** What a bin's main front came to, in a few sentences. */
export function frontLead(front: SeasonFront, units: Units): string {
  const { main, review, verdict, later, earlier, held } = front;
  const { name } = review.bin;
  if (main === null || verdict === 'untold') return `Can’t tell of ${name}: ${sentence(front.why ?? 'not known')}`;
  const { campaign, passed, followed, seen } = main;
  const said = [
    `The ${main.whole ? 'coldest' : 'farthest'} front of ${name} began on ${units.date(campaign.span.fromMs)}, with air of ${units.say('temperature', campaign.airC)} into grain of ${units.say('temperature', campaign.grainC)}, both measured.`,
  ];
  const all =
    passed.length === seen ? `all ${counted(seen, 'sensor')}` : `${passed.length} of ${counted(seen, 'sensor')}`;
  const undated = followed.length === 0 ? '' : ` (${followed.length} more undated)`;
  said.push(
    verdict === 'held'
      ? `It passed ${all}${undated} and did not reach ${placesSaid(held, units, 'cable')}${keptSaid(held, units)}.`
      : `It passed ${all}${undated}${throughSaid(main, units)}.`,
  );
  if (verdict === 'through' && main.held.length > 0)
    said.push(`It did not reach ${placesSaid(main.held, units, 'cable')}; a later front did.`);
  if (main.slowest !== null && main.slowest.behindHours > ARRIVAL_WITHIN_H) {
    const { arrival, behindHours } = main.slowest;
    said.push(
      `The slowest for its height was ${placesSaid([arrival], units, 'cable')}, ${units.say('hours', aboutArrival(behindHours))} behind the other cables.`,
    );
  }
  const speed = campaign.speed?.speedMH;
  if (speed !== undefined && speed.value !== null)
    said.push(`It went ${review.bin.air} at ${units.say('front speed', speed)}.`);
  if (verdict === 'held' && earlier !== null) {
    const { span, airC } = earlier.campaign;
    said.push(
      `An earlier front, from ${units.date(span.fromMs)} with air of ${units.say('temperature', airC)} (measured), had gone through everywhere.`,
    );
  }
  if (later !== null) {
    const { span, fanHours, airC } = later.campaign;
    said.push(
      `Colder air from ${units.date(span.fromMs)} on (${units.say('temperature', airC)}, ${units.say('hours', fanHours)} of fan, both measured) passed ${later.passed.length} of ${later.seen} and did not get through.`,
    );
  }
  return said.join(' ');
}

function throughSaid({ through, throughHours, afterHours }: FrontFinding, units: Units): string {
  if (!through) return '';
  if (throughHours.value === null) return ' and went through everywhere, but when cannot be told';
  const after = ` and was through after ${units.say('hours', throughHours)} of fan running`;
  if ((afterHours.value ?? 0) < 1) return `${after}, when the fans stopped`;
  return `${after}; the fans ran on for ${units.say('hours', afterHours)}`;
}

function keptSaid(held: readonly HeldSensor[], units: Units): string {
  const left = leftC(held);
  return left === null
    ? ''
    : `, left at ${held.length > 1 ? 'up to ' : ''}${units.say('temperature', left)} (measured)`;
}

/** What all tables of the page rest on. */
export function frontNotes(fronts: readonly SeasonFront[]): string[] {
  const airs = new Set(fronts.flatMap((one) => one.review.fronts.campaigns.map((campaign) => campaign.airFrom)));
  const from = [...airs].map((air) => (air === 'plenum' ? 'plenum sensors' : 'the weather log and the fan’s warming'));
  if (fronts.every((one) => one.review.fronts.campaigns.length === 0)) return [];
  return [
    `Fan hours are measured, since the campaign began. Nine arrivals of ten lie within ${ARRIVAL_WITHIN_H} h of the truth on seasons whose truth is known; that makes the 90 % intervals of “through after” and “ran on”, which reach farther where a sensor’s temperature went in two steps nearly alike. Sensors are counts; of the grain between cables no log tells.`,
    `Slowest for its height: the sensor with the most fan hours (+) behind the median of the other cables at its height; up to ${ARRIVAL_WITHIN_H} h are within the error of an arrival. Undated: grain within 3 °C (5.4 °F) of the air already, or that went at least half of the way to it with no front that can be dated. Unread: no good readings. Where a fan dries, hours run on may have served that.`,
    `Air from ${listed(from)}.`,
    PACE_NOTE,
  ];
}

/** What warming came to: told apart, because it takes cooling back. */
export function warmingLead(fronts: readonly SeasonFront[]): string {
  const warmed = fronts.filter((one) => one.warming.length > 0);
  const all = warmed.flatMap((one) => one.warming);
  if (all.length === 0) return 'No warming campaign was found.';
  const through = all.filter((one) => one.through).length;
  return `Fans pushed clearly warmer air into ${counted(warmed.length, 'bin')} in ${counted(all.length, 'campaign')}, through everywhere in ${through}. Drying weather does that; in a bin that is to be cooled it takes cooling back.`;
}
