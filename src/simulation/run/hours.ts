/** A demand charge hour by hour. */
export interface DemandHours {
  pricePerKw: number;
  /** fraction of the highest month before that is billed at least; 0: none */
  ratchet: number;
  /** 1 where the charge's time holds, [hours] */
  holds: Uint8Array;
}

/** Outdoor air, local clock and prices of a stretch of time, hour by hour, without a gap. Arrays are [hours]. */
export interface Hours {
  /** UTC, start of the first hour, ms */
  startMs: number;
  /** outdoor air, mean of the hour: degC; fraction over water; kg/kg */
  tempC: Float64Array;
  rh: Float64Array;
  humidityRatio: Float64Array;
  /** of the site, Pa */
  pressurePa: number;
  /** at the hour's start, local: 0 to 23; 1 to 12; days since the first hour's local day */
  localHour: Uint8Array;
  localMonth: Uint8Array;
  localDay: Uint16Array;
  /** money per kWh; NaN where no price is known */
  pricePerKwh: Float64Array;
  demand: readonly DemandHours[];
}
