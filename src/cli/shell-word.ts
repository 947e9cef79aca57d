/** In single quotes, for bash, zsh and their like. */
export const quoted = (text: string): string => `'${text.replaceAll("'", `'\\''`)}'`;

/** What no shell takes apart or replaces. */
const plain = /^[\p{L}\p{N}_./][\p{L}\p{M}\p{N}_.,/@:%+=-]*$/u;

/** A name as it can be pasted into a command line: in quotes where a shell would take it apart. */
export function shellWord(name: string, platform = process.platform): string {
  const windows = platform === 'win32';
  if (plain.test(windows ? name.replaceAll('\\', '/') : name)) return name;
  return windows ? `"${name}"` : quoted(name);
}
