import type { BinWhatIf } from '../../src/analysis/what-if/what-if-types.ts';
import { csvText } from '../../src/base/csv-text.ts';
import type { Zone } from '../../src/base/zone.ts';
import { isoMoment } from '../../src/report/date-text.ts';

const HOUR_MS = 3_600_000;
const WAYS = ['off', 'fan', 'fan and heater'];

/**
 * The best schedules found in hindsight, hour by hour, beside what the fan's log says (RFC 4180); null where no bin has one.
 *
 * Columns: bin, start of the hour (local, with its offset), part of the hour in which the fan ran by its log, what the schedule
 * does in it.
 */
export function hindsightCsv(whatIf: readonly BinWhatIf[], zone: Zone): string | null {
  const rows = whatIf.flatMap(({ binId, schedule }) =>
    schedule === null
      ? []
      : Array.from(schedule.ways, (way, hour) =>
          [
            csvText(binId),
            isoMoment(zone, schedule.startMs + hour * HOUR_MS),
            String(Number(schedule.logged[hour].toFixed(3))),
            WAYS[way],
          ].join(','),
        ),
  );
  if (rows.length === 0) return null;
  return `${['Bin,Hour from,"Fan on by the log, part of the hour",Best in hindsight', ...rows].join('\r\n')}\r\n`;
}
