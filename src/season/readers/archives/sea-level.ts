import { SEA_LEVEL_RANGE_PA, STATION_TEMP_RANGE_C, stationPressurePa } from '../../../air/pressure.ts';
import { agreeing } from '../../../base/agreeing.ts';
import type { FileReading } from '../file-reading.ts';

/**
 * Pressures that an archive gives reduced to sea level: they become the site's with its elevation, and stay missing without it.
 */
export class SeaLevel {
  private readonly elevationM: number | null;
  private unused = 0;

  constructor(elevationM: number | null) {
    // Higher there is no farm, and the formula does not hold.
    this.elevationM = elevationM !== null && elevationM >= -500 && elevationM <= 5000 ? elevationM : null;
  }

  /** @returns Pa at the site; null without an elevation; a pressure that no weather has stays as it is, for whoever looks at it */
  toStation(seaLevelPa: number, tempC: number): number | null {
    if (this.elevationM === null) {
      this.unused += 1;
      return null;
    }
    const within = (value: number, [low, high]: readonly [number, number]) => value >= low && value <= high;
    if (!within(seaLevelPa, SEA_LEVEL_RANGE_PA)) return seaLevelPa;
    return stationPressurePa(seaLevelPa, this.elevationM, within(tempC, STATION_TEMP_RANGE_C) ? tempC : Number.NaN);
  }

  /** Say how many pressures were left out, if any. */
  tell({ findings, path, tally }: FileReading): void {
    if (this.unused === 0) return;
    findings.push({
      kind: 'gap',
      where: path,
      binId: null,
      fromMs: tally.firstMs,
      toMs: tally.lastMs,
      cells: this.unused,
      text: `${path}: ${this.unused} sea-level ${agreeing(this.unused, 'pressure is', 'pressures are')} left out, because season.yaml does not tell the elevation of the site.`,
      advice: 'Add elevation to site.',
    });
  }
}
