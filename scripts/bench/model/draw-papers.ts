import { DAY, HOUR, MINUTE } from '../../sample/calendar.ts';
import { toWetBasis } from '../../sample/kernels.ts';
import { randomStream } from '../../sample/random.ts';
import { round } from '../coverage/draw-cables.ts';
import type { Logs } from '../coverage/log-season.ts';
import type { SeasonDraw } from '../coverage/plan.ts';
import type { BinTrace } from '../coverage/run-bin.ts';

type Tickets = NonNullable<Logs['tickets']>;

/** Part of the bins whose loads were weighed and sampled as they came in, and of those emptied that were as they went out. */
const WEIGHED_IN = 0.8;
const WEIGHED_OUT = 0.6;
const TRUCK_KG = 24_000;
/** Of a farm's moisture meter (shared by all loads), and of sampling and reading one load: sd, points. */
const METER = 0.15;
const SAMPLE = 0.2;

/** The scale tickets of a season; bins whose loads nobody weighed have none. */
export function drawPapers(draw: SeasonDraw, traces: readonly BinTrace[]): Tickets {
  const random = randomStream(draw.seed, 'papers');
  const meter = METER * random.normal();
  const tickets: Tickets = [];
  traces.forEach((trace) => {
    const { id, loadsWb, filledMs, endMs, unloaded } = trace.draw;
    const weigh = (ms: number, direction: 'in' | 'out', kg: number, moisture: number) =>
      tickets.push({
        ms: Math.round(ms / MINUTE) * MINUTE,
        bin: id,
        direction,
        kg: 10 * Math.round(kg / 10 + 1.5 * random.normal()),
        moisture: round(moisture + meter + SAMPLE * random.normal(), 1),
      });
    const dryShare = loadsWb.reduce((sum, wb) => sum + 1 - wb / 100, 0) / loadsWb.length;
    const layerKg = trace.dryKg / dryShare / loadsWb.length;
    if (random.uniform() < WEIGHED_IN) {
      const trucks = Math.ceil(layerKg / TRUCK_KG);
      loadsWb.forEach((wb, layer) => {
        for (let truck = 0; truck < trucks; truck++) {
          const before = (loadsWb.length - layer - truck / trucks) * HOUR;
          weigh(filledMs - before, 'in', layerKg / trucks, wb);
        }
      });
    }
    if (!unloaded || random.uniform() >= WEIGHED_OUT) return;
    const wb = toWetBasis(trace.meanDb[trace.steps - 1]);
    const kg = (0.998 * trace.dryKg) / (1 - wb / 100);
    const count = Math.ceil(kg / TRUCK_KG);
    for (let truck = 0; truck < count; truck++) weigh(endMs + (DAY * truck) / count, 'out', kg / count, wb);
  });
  return tickets;
}
