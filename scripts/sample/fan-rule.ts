import { DAY, HOUR, localClock } from './calendar.ts';
import type { Stage } from './farm-types.ts';
import type { Kernel } from './kernels.ts';
import { toWetBasis } from './kernels.ts';
import { meanTempC, type Weather } from './weather.ts';

/** What the person or box at the switch knows. */
export interface Situation {
  utcMs: number;
  outdoorC: number;
  /** air as it would enter the grain with the fan on */
  plenumC: number;
  plenumRh: number;
  grainMeanC: number;
  grainMoistureWb: number;
  on: boolean;
}

/** What a stage remembers as it goes. */
export interface StageMemory {
  begun: boolean;
  done: boolean;
  fanMs: number;
  /** mean grain temperature when the front began */
  grainC: number;
}

export const newMemory = (): StageMemory => ({ begun: false, done: false, fanMs: 0, grainC: 0 });

/** Should the fan run now? The generator's own rules, apart from the kit's strategies. */
export function wantsFan(stage: Stage, memory: StageMemory, now: Situation, kernel: Kernel, weather: Weather): boolean {
  const { rule } = stage;
  if (memory.done) return false;
  if (stage.untilMoisture !== undefined && now.grainMoistureWb <= stage.untilMoisture) {
    memory.done = true;
    return false;
  }
  switch (rule.kind) {
    case 'always':
      return true;
    case 'daytime': {
      const hour = localClock(now.utcMs).getUTCHours();
      return hour >= rule.hours[0] && hour < rule.hours[1];
    }
    case 'humidity-below':
      return now.plenumRh < rule.rh + (now.on ? 0.03 : 0);
    case 'moisture-window': {
      const emc = toWetBasis(kernel.emc(now.plenumRh, now.plenumC));
      const slack = now.on ? 0.4 : 0;
      return emc > rule.low - slack && emc < rule.high + slack && now.plenumC > 1;
    }
    case 'front': {
      if (!memory.begun) {
        const coming = meanTempC(weather, now.utcMs, now.utcMs + 4 * DAY);
        if (coming > now.grainMeanC - rule.dropK || now.outdoorC > now.grainMeanC - 2) return false;
        memory.begun = true;
        memory.grainC = now.grainMeanC;
      }
      if (memory.fanMs >= rule.hours * HOUR) {
        memory.done = true;
        return false;
      }
      return now.plenumC < memory.grainC - rule.restAboveK - (now.on ? 0 : 0.5);
    }
  }
}
