import { expect, it } from 'vitest';
import { namesApart } from '../../src/capture/names-apart.js';

it.each([
  [['a.png'], ['a.png']],
  [['box/a.png'], ['a.png']],
  [
    ['box/a.png', 'box/b.png'],
    ['a.png', 'b.png'],
  ],
  [
    ['day/lamp-30/still.png', 'day/lamp-50/still.png'],
    ['lamp-30/still.png', 'lamp-50/still.png'],
  ],
  [
    ['/a.png', 'a.png'],
    ['/a.png', 'a.png'],
  ],
  [
    ['box/a.png', 'box/a.png'],
    ['a.png', 'a.png'],
  ],
  [
    ['C:\\reels\\reel.mkv@1:20.5', 'C:\\reels\\b.png'],
    ['reel.mkv@1:20.5', 'b.png'],
  ],
])('of %j, %j is left', (names, left) => expect(namesApart(names)).toEqual(left));
