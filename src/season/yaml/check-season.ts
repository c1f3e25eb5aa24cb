import { zoneOf } from '../../base/zone.ts';
import { checkBin } from './bin.ts';
import type { Check } from './check.ts';
import { dayAfter, instant } from './dates.ts';
import type { Draft } from './draft.ts';
import { checkFan } from './fan.ts';
import { checkIds, checkReference, idsOf } from './ids.ts';
import { checkMeasures } from './measures.ts';
import { checkDryingAlternative, checkPrices } from './prices.ts';
import type { SeasonText } from './season-schema.ts';
import { checkTariff } from './tariff.ts';

/** What no single value shows: ids, references, order, keys that hang together. Files are checked by checkFiles. */
export function checkSeason(draft: Draft<SeasonText>, check: Check): void {
  // A zone that is wrong is told already; the order of dates is the same in any.
  const zone = zoneOf(draft.site?.time_zone ?? 'UTC');
  const { starts, ends } = draft;
  if (starts !== undefined && ends !== undefined && !(dayAfter(ends, zone) > instant(starts, zone))) {
    check.report('SEASON_DATE', ['ends'], `is "${ends}", before starts ("${starts}"). Check both dates.`);
  }
  for (const part of ['tariffs', 'bins', 'fans'] as const) checkIds(part.slice(0, -1), draft[part], [part], check);
  draft.tariffs?.forEach((tariff, i) => {
    if (tariff !== undefined) checkTariff(tariff, ['tariffs', i], check);
  });
  checkPrices(draft.prices, check);
  checkDryingAlternative(draft.drying_alternative, check);
  draft.bins?.forEach((bin, i) => {
    if (bin !== undefined) checkBin(bin, ['bins', i], zone, check);
  });
  const tariffs = idsOf(draft.tariffs, ['tariffs'], check);
  draft.fans?.forEach((fan, i) => {
    if (fan !== undefined) checkFan(fan, ['fans', i], tariffs, check);
  });
  checkBinFans(draft, check);
  checkMeasures(draft, check);
}

function checkBinFans(draft: Draft<SeasonText>, check: Check): void {
  const fans = idsOf(draft.fans, ['fans'], check);
  draft.bins?.forEach((bin, b) => {
    bin?.fans?.forEach((fan, f) => {
      const path = ['bins', b, 'fans', f];
      if (fan !== undefined && bin.fans?.indexOf(fan) !== f) {
        check.report('SEASON_ID', path, `is "${fan}", which stands in the list already. Keep it once.`);
      } else checkReference('fan', fan, fans, path, check);
    });
  });
}
