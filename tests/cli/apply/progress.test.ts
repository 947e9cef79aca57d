import { afterEach, describe, expect, it, vi } from 'vitest';
import {
  duration,
  paceInWords,
  paceKeeper,
  startProgress,
} from '../../../src/cli/commands/apply/progress.js';

afterEach(() => void vi.useRealTimers());

describe('duration', () => {
  it.each([
    [0, '0 s'],
    [0.2, '1 s'],
    [89.5, '90 s'],
    [90, '2 min'],
    [3600, '60 min'],
    [5400, '1 h 30 min'],
    [36_001, '10 h 1 min'],
  ])('%d seconds: %s', (seconds, words) => expect(duration(seconds)).toBe(words));
});

describe('the pace', () => {
  it('is told once there is one', () => {
    expect(paceInWords({ done: 0, total: 7 })).toBe('0 of 7 frames');
    expect(paceInWords({ done: 40, total: 200, rate: 3.2 })).toBe(
      '40 of 200 frames, 3.20 a second, 50 s left',
    );
    expect(paceInWords({ done: 7, total: 7, rate: 24 })).toBe('7 of 7 frames, 24.0 a second, 0 s left');
  });

  it('is that of an even run, and falls while nothing comes', () => {
    const pace = paceKeeper(100);
    expect(pace.rate(100)).toBeUndefined();
    for (let frame = 1; frame <= 500; frame++) pace.count(100 + frame / 4);
    expect(pace.rate(225)).toBeCloseTo(4, 9);
    expect(pace.rate(250)).toBeLessThan(2);
  });

  it('follows a change within some frames', () => {
    const pace = paceKeeper(0);
    for (let frame = 1; frame <= 100; frame++) pace.count(frame);
    for (let frame = 1; frame <= 60; frame++) pace.count(100 + frame / 10);
    expect(pace.rate(106)).toBeCloseTo(10, 6);
  });
});

describe('the line on the screen', () => {
  function screenOf(isTTY: boolean, columns = 80) {
    const written: string[] = [];
    return { written, isTTY, columns, write: (text: string) => written.push(text) > 0 };
  }

  it('writes nothing where there is no terminal, and lets other words through', () => {
    const screen = screenOf(false);
    const progress = startProgress(3, screen as never);
    const said = vi.fn();
    progress.count();
    progress.around(said);
    progress.end();
    expect(screen.written).toEqual([]);
    expect(said).toHaveBeenCalledOnce();
  });

  it('rubs itself out before other words and at the end, and never breaks a narrow terminal', () => {
    vi.useFakeTimers();
    const screen = screenOf(true, 20);
    const progress = startProgress(3000, screen as never);
    progress.count();
    vi.advanceTimersByTime(2000);
    expect(screen.written.join('')).toContain('1 of 3000 frames, ');
    expect(Math.max(...screen.written.map((text) => text.length))).toBeLessThan(20);
    progress.around(() => expect(screen.written.at(-1)).toBe('\r\u001b[K'));
    progress.end();
    expect(screen.written.at(-1)).toBe('\r\u001b[K');
    const length = screen.written.length;
    vi.advanceTimersByTime(2000);
    expect(screen.written).toHaveLength(length);
  });
});
