/** Names of files without the folders in which all of them lie: shorter, and still told apart. */
export function namesApart(names: readonly string[]): string[] {
  const parts = names.map((name) => name.split(/[/\\]/));
  let shared = 0;
  while (parts.every((part) => shared < part.length - 1 && part[shared] === parts[0][shared])) shared++;
  return parts.map((part) => part.slice(shared).join('/'));
}
