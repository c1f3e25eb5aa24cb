/** What a bin's fans do with the grain at one depth. */
export interface Blower {
  /** air that the fans take in for each m2 of floor, m3/(m2 s), mean of the bin: a fan moves a volume, so cold air is more of it */
  airM3M2S: number;
  /** warming by fan and motor, K */
  warmingK: number;
  /** electric power of the fans, W */
  powerW: number;
  /** the heater's warming on top, K, at the season's mean of that air; 0 without one */
  heaterK: number;
  /** electric power of the heater, W, and money for its fuel for each hour */
  heaterW: number;
  heaterFuelPerHour: number;
}
