import { describe, expect, it } from 'vitest';
import {
  requireLookName,
  requireLutName,
  requireMovieAmong,
  requireSourceName,
  requireStillName,
} from '../../src/cli/kind-of-name.js';

describe('what a name says of a file', () => {
  it.each(['warm.json', 'looks/warm.JSON', 'look', 'Reel 1.2'])('%s may be a look', (name) => {
    expect(() => requireLookName(name)).not.toThrow();
  });

  it.each(['reel/', 'look', 'Reel 1.2'])('%s is neither look nor LUT where either may stand', (name) => {
    expect(() => requireSourceName(name)).toThrow(
      /is not the name of a look \(\.json\) or a LUT \(\.cube, \.clf\)/,
    );
  });

  it.each([
    ['warm.json', 'is a look file'],
    ['warm.cube', 'is a LUT'],
  ])('%s %s, and no still', (name, words) => {
    expect(() => requireSourceName(name)).not.toThrow();
    expect(() => requireStillName(name)).toThrow(`${words}, and a still is wanted`);
  });

  it.each(['warm.cube', 'day/WARM.CLF'])('%s is a LUT, and no look file', (name) => {
    expect(() => requireLookName(name)).toThrow(/is a LUT, and a look file \(\.json\) is wanted/);
    expect(() => requireSourceName(name)).not.toThrow();
    expect(() => requireLutName(name)).not.toThrow();
  });

  it.each([
    ['warm.json', /is a look file, and a LUT .* is wanted/],
    ['still.png', /is a still, and a LUT .* is wanted/],
    ['reel.mkv', /is a movie, and a LUT .* is wanted/],
  ])('%s is no LUT', (name, words) => expect(() => requireLutName(name)).toThrow(words));

  it.each([
    ['still.PNG', 'a still'],
    ['reel.mkv@1:20.5', 'a still'],
    ['reel.mkv', 'a movie'],
  ])('%s is %s, neither look nor LUT', (name, kind) => {
    for (const check of [requireLookName, requireSourceName])
      expect(() => check(name)).toThrow(`is ${kind}, and a look`);
  });
});

describe('what overrules a movie’s tags', () => {
  it.each([[['still.png']], [['warm.cube', 'a.tif', 'b.JPG']], [['warm.cube']]])(
    'is refused beside %j, which would pass over it',
    (names) => {
      const refused = /is for movie files, and none was given/;
      expect(() => requireMovieAmong({ range: 'legal' }, names)).toThrow(refused);
      expect(() => requireMovieAmong({ matrix: 'bt709', range: 'legal' }, names)).toThrow(refused);
      expect(() => requireMovieAmong({}, names)).not.toThrow();
    },
  );

  it.each([[['warm.cube', 'reel.mkv']], [['still.png', 'reel.mkv@f12']], [['recording.h264']], [['reel/']]])(
    'is taken beside %j',
    (names) => expect(() => requireMovieAmong({ matrix: 'bt709' }, names)).not.toThrow(),
  );
});
