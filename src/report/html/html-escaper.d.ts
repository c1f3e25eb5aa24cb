declare module 'html-escaper' {
  /** `&`, `<`, `>`, `'` and `"` as character references. */
  const escapeHtml: (text: string) => string;

  export { escapeHtml as escape };
}
