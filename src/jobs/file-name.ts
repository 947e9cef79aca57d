/** A file's name without the folders it lies in. */
export const fileName = (path: string): string => path.replace(/^.*[/\\]/, '');
