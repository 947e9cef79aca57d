/** Does the last thing asked once nothing was asked for a while. */
export function later(waitMs: number) {
  let timer: ReturnType<typeof setTimeout> | undefined;
  return (work: () => void): void => {
    clearTimeout(timer);
    timer = setTimeout(work, waitMs);
  };
}

/** Does the last thing asked, at most once in a while, and never at once. */
export function nowAndThen(waitMs: number) {
  let work: (() => void) | undefined;
  return (asked: () => void): void => {
    if (work === undefined)
      setTimeout(() => {
        const due = work!;
        work = undefined;
        due();
      }, waitMs);
    work = asked;
  };
}
