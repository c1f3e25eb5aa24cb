/** What was thrown, as a text: an error's message, else the thing itself. */
export function errorText(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
