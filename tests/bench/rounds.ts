// The bench's way of timing: contenders take turns, A B A B, so that a busy moment of the machine meets all of them.

/** Does one turn of work and says how long it took, by whatever clock is fair to it. */
export type Turn = () => number | Promise<number>;

/** Seconds of processor time that this process takes for some work: what other programs take does not count. */
export function processorSeconds(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

/** Seconds that pass, for work that several threads share. */
export async function passingSeconds(work: () => void | Promise<void>): Promise<number> {
  const start = performance.now();
  await work();
  return (performance.now() - start) / 1000;
}

/** Contenders by name; one that this machine does not have is left out. */
type Contenders = Readonly<Record<string, Turn | undefined>>;

/**
 * Rounds in which every contender has its turn, after some that do not count.
 * @returns the times of each, round by round
 */
export async function inTurns<Given extends Contenders>(
  contenders: Given,
  rounds: number,
  warmUps = 1,
): Promise<{ [Name in keyof Given]: number[] }> {
  const turns = Object.entries(contenders).flatMap(([name, turn]) =>
    turn === undefined ? [] : [{ name, turn, times: [] as number[] }],
  );
  for (let round = -warmUps; round < rounds; round++)
    for (const { turn, times } of turns) {
      const time = await turn();
      if (round >= 0) times.push(time);
    }
  return Object.fromEntries(turns.map(({ name, times }) => [name, times])) as {
    [Name in keyof Given]: number[];
  };
}

/** The middle one; of an even number the upper of the two. */
export function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[values.length >> 1];
}

/** The median of ratios taken round by round, so that a slow round is slow on both sides. */
export function medianRatio(ours: readonly number[], theirs: readonly number[]): number {
  return median(ours.map((time, round) => time / theirs[round]));
}
