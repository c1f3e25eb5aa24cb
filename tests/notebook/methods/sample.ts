/** Values of symbols, with the functions' results among them. */
export type Sample = Readonly<Record<string, number | ((x: number) => number)>>;

/** By the formula's id. */
export type Samples = Readonly<Record<string, () => readonly Sample[]>>;
