import { describe, expect, it } from 'vitest';
import { inTurn, turns } from '../../../src/cli/commands/apply/turns.js';

const later = (turnsOfLoop: number) =>
  new Promise<void>((resolve) => {
    const step = (left: number) => (left === 0 ? resolve() : void setImmediate(step, left - 1));
    step(turnsOfLoop);
  });

describe('turns', () => {
  it('lets no more go on at once than said, first come first', async () => {
    const takeTurn = turns(3);
    const begun: number[] = [];
    let going = 0;
    let most = 0;
    const work = (i: number) =>
      takeTurn(async () => {
        begun.push(i);
        most = Math.max(most, ++going);
        await later(i % 4);
        going--;
        return i;
      });
    const items = Array.from({ length: 40 }, (_, i) => i);
    expect(await Promise.all(items.map(work))).toEqual(items);
    expect(begun).toEqual(items);
    expect(most).toBe(3);
  });

  it('hands the turn on when a work fails', async () => {
    const takeTurn = turns(1);
    const failing = takeTurn(() => Promise.reject(new Error('no')));
    const next = takeTurn(async () => 'yes');
    await expect(failing).rejects.toThrow('no');
    expect(await next).toBe('yes');
  });
});

describe('inTurn', () => {
  it('begins items in their order and does each once', async () => {
    const items = Array.from({ length: 25 }, (_, i) => i);
    const begun: number[] = [];
    await inTurn(items, 4, async (item) => {
      begun.push(item);
      await later((item * 7) % 5);
    });
    expect(begun).toEqual(items);
  });

  it('begins no other once one has failed, or it is told to stop', async () => {
    const begun: number[] = [];
    const items = Array.from({ length: 100 }, (_, i) => i);
    const work = inTurn(items, 2, async (item) => {
      begun.push(item);
      await later(1);
      if (item === 5) throw new Error('five');
    });
    await expect(work).rejects.toThrow('five');
    await later(10);
    expect(begun.length).toBeLessThan(10);

    let count = 0;
    await inTurn(
      items,
      2,
      async () => void count++,
      () => count < 7,
    );
    expect(count).toBe(7);
  });
});
