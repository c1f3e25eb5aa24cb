/** Papers that a PDF may be printed on. */
export const PAPERS = ['letter', 'a4'] as const;
export type Paper = (typeof PAPERS)[number];
