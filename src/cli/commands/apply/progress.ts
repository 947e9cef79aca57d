/** What is known of a run that is going on. */
export interface Pace {
  readonly done: number;
  readonly total: number;
  /** Frames a second; undefined before any can be told. */
  readonly rate?: number;
}

/** A duration as people say it: 48 s, 12 min, 3 h 20 min. */
export function duration(seconds: number): string {
  if (seconds < 90) return `${Math.ceil(seconds)} s`;
  const minutes = Math.ceil(seconds / 60);
  return minutes < 90 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
}

/** Three digits at least where they say something: 0.25, 3.41, 24.0. */
const rateInWords = (rate: number): string => (rate < 10 ? rate.toFixed(2) : rate.toFixed(1));

/** `37 of 200 frames, 3.41 a second, 48 s left` */
export function paceInWords({ done, total, rate }: Pace): string {
  const counted = `${done} of ${total} frames`;
  if (rate === undefined || rate <= 0) return counted;
  return `${counted}, ${rateInWords(rate)} a second, ${duration((total - done) / rate)} left`;
}

/** Frames over which the pace is taken: enough to be steady, few enough to follow a change. */
const recentFrames = 40;

/** The pace of the latest frames. @param start when the run began, in seconds */
export function paceKeeper(start: number) {
  const times = [start];
  return {
    /** One more frame has ended. @param now in seconds */
    count(now: number): void {
      times.push(now);
      if (times.length > recentFrames) times.shift();
    },
    /** Frames a second up to `now`, in seconds; a run that stands still grows slower. */
    rate(now: number): number | undefined {
      return times.length > 1 && now > times[0] ? (times.length - 1) / (now - times[0]) : undefined;
    },
  };
}

/** A line on a terminal that tells how far a run is, and makes room for other words. */
export interface Progress {
  /** One more frame has ended, well or not. */
  count(): void;
  /** Writes other words without mixing them with the line. */
  around(write: () => void): void;
  /** The line goes. */
  end(): void;
}

/** As much of a stream as is used: standard error. */
export type Screen = Pick<NodeJS.WriteStream, 'isTTY' | 'columns' | 'write'>;

const silent: Progress = { count: () => {}, around: (write) => write(), end: () => {} };

/** Columns of a terminal that does not say how many it has. */
const usualColumns = 80;

/** Milliseconds between two looks at the clock. */
const interval = 250;

/** Begins to tell of a run of `total` frames; nothing at all where `screen` is no terminal. */
export function startProgress(total: number, screen: Screen = process.stderr): Progress {
  if (!screen.isTTY) return silent;
  const seconds = () => performance.now() / 1000;
  const pace = paceKeeper(seconds());
  let done = 0;
  let ended = false;
  // Back to the line's beginning, and what stands there rubbed out (ECMA-48: CR, EL).
  const rubOut = () => screen.write('\r\u001b[K');
  const draw = () => {
    if (ended) return;
    const line = paceInWords({ done, total, rate: pace.rate(seconds()) });
    rubOut();
    screen.write(line.slice(0, Math.max(0, (screen.columns || usualColumns) - 1)));
  };
  draw();
  const timer = setInterval(draw, interval).unref();
  return {
    count() {
      done++;
      pace.count(seconds());
    },
    around(write) {
      if (!ended) rubOut();
      write();
      draw();
    },
    end() {
      ended = true;
      clearInterval(timer);
      rubOut();
    },
  };
}
