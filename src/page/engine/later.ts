/** Does the last thing asked once nothing was asked for a while. */
export function later(waitMs: number) {
  let timer: ReturnType<typeof setTimeout> | undefined;
  return (work: () => void): void => {
    clearTimeout(timer);
    timer = setTimeout(work, waitMs);
  };
}
