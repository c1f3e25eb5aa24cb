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
// One bin in one weather for all strategies, as a sweep has it: what is worked out once for both is not an hour's.
const bin = { ...inventedBin(hours), endHour: count };
const all = STRATEGIES.map((strategy) => ({ id: strategy.id, wrapped: untilReached(strategy, 'dry') }));
// Warm: the compiler has seen every strategy.
for (let i = 0; i < 10; i++) for (const { wrapped } of all) runSeason(bin, wrapped);
const bytes: Record<string, number> = {};
for (const { id, wrapped } of all) {
  bytes[id] = bytesPerCall((calls) => {
    if (calls !== count) throw new Error(`${calls} hours are asked for, the bin has ${count}`);
    return runSeason(bin, wrapped).outcome.endTempC;
  });
}
process.stdout.write(JSON.stringify(bytes));
