/** `First look!` as `first-look`: fit for addresses and names of files; `part` where no letter of it is Latin. */
export function plainId(title: string): string {
  const words = title
    .normalize('NFKD')
    .toLowerCase()
    .match(/[a-z0-9]+/g);
  return words === null ? 'part' : words.join('-');
}

/** The same for a title among others that have theirs: a second one counts on. */
export function uniqueId(title: string, taken: readonly string[]): string {
  const id = plainId(title);
  if (!taken.includes(id)) return id;
  let n = 2;
  while (taken.includes(`${id}-${n}`)) n += 1;
  return `${id}-${n}`;
}
