import { describe, expect, it } from 'vitest';
import { shareLine } from '../../src/cli/share-line.js';

/** A screen that keeps what was written, and a clock that goes as it is set. */
function stage(isTTY: boolean) {
  const written: string[] = [];
  const screen = { isTTY, columns: 80, write: (text: string) => written.push(text) > 0 };
  const clock = { now: 0 };
  return { written, clock, line: shareLine('table', screen as never, () => clock.now) };
}

describe('the line that tells a share', () => {
  it('appears after a second, is written anew at most four times a second, and goes in the end', () => {
    const { written, clock, line } = stage(true);
    for (clock.now = 0; clock.now < 2000; clock.now += 10) line.tell(clock.now / 2000);
    line.end();
    expect(written).toEqual([
      '\r\u001b[Ktable: 50 %',
      '\r\u001b[Ktable: 62 %',
      '\r\u001b[Ktable: 75 %',
      '\r\u001b[Ktable: 87 %',
      '\r\u001b[K',
    ]);
  });

  it('leaves no trace of work that ends sooner', () => {
    const { written, clock, line } = stage(true);
    for (clock.now = 0; clock.now < 900; clock.now += 10) line.tell(0.5);
    line.end();
    expect(written).toEqual([]);
  });

  it('is silent where there is no terminal', () => {
    const { written, clock, line } = stage(false);
    for (clock.now = 0; clock.now < 3000; clock.now += 10) line.tell(0.5);
    line.end();
    expect(written).toEqual([]);
  });
});
