import { DAY, HOUR, localClock } from '../../sample/calendar.ts';
import { meanTempC, type Weather } from '../../sample/weather.ts';
import type { BinDraw } from './plan.ts';

/** The person or box at the switch; rules of the generator's own. */
export class FanSwitch {
  private readonly draw: BinDraw;
  private readonly weather: Weather;
  private readonly stepMs: number;
  private readonly frontHours: number;
  private hours = 0;
  private begun = false;
  private done = false;
  private was = false;

  /** @param stepMs  between two askings */
  constructor(draw: BinDraw, weather: Weather, stepMs: number) {
    this.draw = draw;
    this.weather = weather;
    this.stepMs = stepMs;
    this.frontHours = (1.15 * 15) / draw.cfmPerBu;
  }

  wants(ms: number, plenumC: number, plenumRh: number, grainC: number, grainWb: number): boolean {
    const now = !this.done && ms >= this.draw.fanFromMs && this.ruled(ms, plenumC, plenumRh, grainC, grainWb);
    if (now) this.hours += this.stepMs / HOUR;
    this.was = now;
    return now;
  }

  private ruled(ms: number, plenumC: number, plenumRh: number, grainC: number, grainWb: number): boolean {
    const { draw, weather } = this;
    const slack = this.was ? 0.03 : 0;
    const hour = localClock(ms).getUTCHours();
    const lastDays = ms > draw.endMs - 6 * DAY;
    if (draw.goal === 'dry') {
      if (grainWb <= draw.targetWb || lastDays) this.done = true;
      return !this.done && (draw.running === 'continuous' || plenumRh < 0.7 + slack);
    }
    if (draw.goal === 'condition') {
      if (grainWb >= draw.targetWb || lastDays) this.done = true;
      return !this.done && plenumRh > 0.6 - slack && plenumRh < 0.85 + slack && plenumC > 1;
    }
    if (draw.goal === 'hold') return localClock(ms).getUTCDay() === 2 && hour >= 6 && hour < 14;
    if (!this.begun) {
      this.begun = meanTempC(weather, ms, ms + 4 * DAY) < grainC - 6;
      if (!this.begun) return false;
    }
    if (this.hours >= this.frontHours) this.done = true;
    return !this.done && (draw.running === 'continuous' || hour >= 20 || hour < 8);
  }
}
