/** The part of the library in use; it ships no types. */
declare module 'jstat' {
  const library: {
    studentt: {
      /** value below which a share p of Student's t with `degrees` of freedom lies */
      inv(p: number, degrees: number): number;
    };
    normal: {
      /** share below x */
      cdf(x: number, mean: number, sd: number): number;
      /** value below which a share p lies */
      inv(p: number, mean: number, sd: number): number;
    };
  };
  export default library;
}
