/** A cable in a bin and where its sensors hang. */
export interface Cable {
  id: string;
  fromCentreM: number;
  /** clockwise from north; null where not said */
  bearingDeg: number | null;
  /** height above the floor of sensor 1, 2, … as the log numbers them, m */
  sensorHeightsM: readonly number[];
}
