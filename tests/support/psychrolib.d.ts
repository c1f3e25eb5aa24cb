/** The reference library comes without types; these are the functions that tests use. Pa, degC, kg/kg, J/kg. */
declare module 'psychrolib' {
  const psychrolib: {
    SI: number;
    IP: number;
    SetUnitSystem(system: number): void;
    [name: string]: ((...values: number[]) => number) | number | ((system: number) => void);
  };
  export default psychrolib;
}
