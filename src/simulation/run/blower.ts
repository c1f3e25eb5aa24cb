/** What a bin's fans do with the grain at one depth. */
export interface Blower {
  /** dry air through the floor, kg/(m2 s), mean of the bin */
  dryAirKgM2S: number;
  /** warming by fan and motor, K */
  warmingK: number;
  /** electric power of the fans, W */
  powerW: number;
  /** the heater's warming on top, K; 0 without one */
  heaterK: number;
  /** electric power of the heater, W, and money for its fuel for each hour */
  heaterW: number;
  heaterFuelPerHour: number;
}
