// Run by run-bytes.test.ts in a process of its own, where no test runner has rewritten the modules.
import { bytesPerCall } from '../../../scripts/bench/bytes-per-call.ts';
import { runSeason } from '../../../src/simulation/run/run-season.ts';
import { STRATEGIES } from '../../../src/simulation/strategies/strategies.ts';
import { untilReached } from '../../../src/simulation/strategies/until-reached.ts';
import { inventedBin, inventedHours } from './invented-bin.ts';

const count = 4000;
const hours = inventedHours(
  { count, tempC: (hour) => 8 + 6 * Math.sin(hour / 4), rh: (hour) => 0.7 + 0.2 * Math.cos(hour / 4) },
  { demand: [{ pricePerKw: 9, ratchet: 0.5, holds: new Uint8Array(count).fill(1) }] },
);
const bin = inventedBin(hours);
const bytes: Record<string, number> = {};
for (const strategy of STRATEGIES) {
  const wrapped = untilReached(strategy, 'dry');
  bytes[strategy.id] = bytesPerCall((calls) => runSeason({ ...bin, endHour: calls }, wrapped).outcome.endTempC);
}
process.stdout.write(JSON.stringify(bytes));
