/** A definition or equation that stands behind numbers on pages. */
export interface Method {
  id: string;
  title: string;
  /** what is done, in whole sentences a grower can follow */
  statement: string;
  /** values that the statement takes, each with unit and where it comes from */
  constants: readonly string[];
  /** keys of the bibliography; empty: the definition is the kit's own */
  sourceKeys: readonly string[];
  /** ids of the pages whose numbers hang on it */
  usedOn: readonly string[];
  /** true: numbers hang on it only where a fan has a heater */
  ofHeaters?: true;
}
