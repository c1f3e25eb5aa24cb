import { zoneOf } from '../../base/zone.ts';
import type { FileSpec, Season } from '../season.ts';
import { toBin } from './bin.ts';
import { dayAfter, instant } from './dates.ts';
import { toFan } from './fan.ts';
import { toFile } from './file.ts';
import { toMeasures } from './measures.ts';
import { toDryingAlternative, toPrices } from './prices.ts';
import type { SeasonText } from './season-schema.ts';
import { toSensorErrors } from './sensors.ts';
import { toSite } from './site.ts';
import { toTariff } from './tariff.ts';
import { toUsefulHours } from './useful-hours.ts';

export interface Around {
  /** absolute path of the season folder */
  folder: string;
  currency: string;
  /** for each entry of `files`: the files that match, and where its `path` stands */
  matches: readonly { paths: readonly string[]; at: FileSpec['at'] }[];
  /** where `starts`, else `ends` stands; null where neither does */
  boundsAt: Season['boundsAt'] | null;
}

/** The season of a text that has passed all checks, in SI units and UTC, with every default filled in. */
export function buildSeason(text: SeasonText, { folder, currency, matches, boundsAt }: Around): Season {
  const zone = zoneOf(text.site.time_zone);
  return {
    title: text.season,
    folder,
    startsMs: text.starts === undefined ? null : instant(text.starts, zone),
    endsMs: text.ends === undefined ? null : dayAfter(text.ends, zone),
    ...(boundsAt === null ? {} : { boundsAt }),
    preparedFor: text.prepared_for ?? null,
    preparedBy: text.prepared_by ?? null,
    site: toSite(text.site, currency),
    showUnits: text.show_units ?? 'us',
    currency,
    tariffs: (text.tariffs ?? []).map((one) => toTariff(one, currency)),
    prices: toPrices(text.prices ?? {}, currency),
    dryingAlternative:
      text.drying_alternative === undefined ? null : toDryingAlternative(text.drying_alternative, currency),
    bins: text.bins.map((one) => toBin(one, zone, currency)),
    fans: (text.fans ?? []).map((one) => toFan(one, currency)),
    sensors: toSensorErrors(text.sensors, currency),
    usefulHours: toUsefulHours(text.useful_hours, currency),
    measures: toMeasures(text.measures ?? [], currency),
    files: (text.files ?? []).map((one, i) => toFile(one, matches[i].at, matches[i].paths)),
  };
}
