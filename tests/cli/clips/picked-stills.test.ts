import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isRefusal, openWorkbench } from './workbench.js';

const { at, gatelight, ffmpeg } = openWorkbench();

describe('stills picked from a movie', () => {
  // Black leader, two scenes drawn by ffmpeg, white leader.
  const scene = (tone: string) => ['-f', 'lavfi', '-i', `${tone}s=320x240:r=25:d=1.2`];
  // Its colours are pure: they would be taken as burnt out.
  const paler = 'format=yuv420p,lutyuv=y=val*0.6+30:u=val*0.5+64:v=val*0.5+64';
  const grain = 'noise=alls=6:allf=t,format=yuv420p';
  ffmpeg(
    ...[...scene('color=black:'), ...scene('testsrc2='), ...scene('smptebars='), ...scene('color=white:')],
    ...[
      '-filter_complex',
      `[1]${paler}[1p];[0][1p][2][3]concat=n=4,${grain}`,
      '-c:v',
      'ffv1',
      at('pick.mkv'),
    ],
  );
  const places = (text: string) => [...text.matchAll(/@f(\d+)/g)].map(([, frame]) => Number(frame));

  // Three whole processes, one of which measures: a busy machine takes its time.
  it('no leader; names that can be given back; kept as files', { timeout: 180_000 }, () => {
    const ended = gatelight(['measure', 'pick.mkv', '--stills', '4', '--keep', 'kept', '--json']);
    expect(ended.status, ended.stderr).toBe(0);
    const { stills } = JSON.parse(ended.stdout) as { stills: string[] };
    expect(stills).toHaveLength(4);
    const taken = places(stills.join());
    for (const frame of taken) expect(frame > 30 && frame < 89 && frame !== 59 && frame !== 60).toBe(true);
    expect(taken.some((frame) => frame < 59) && taken.some((frame) => frame > 60)).toBe(true);
    expect(ended.stderr).toMatch(/passed over: .*black.*white/);
    expect(readdirSync(at('kept'))).toEqual(
      taken.map((frame) => `pick-f${String(frame).padStart(6, '0')}.png`),
    );
    expect(gatelight(['measure', ...stills, '--json']).status).toBe(0);
    const again = gatelight(['measure', 'pick.mkv', '--stills', '4', '--keep', 'kept']);
    expect(again.status).toBe(2);
    expect(again.stderr).toContain('already exists');
  });

  it('refuses a movie of leader, and what is no movie', () => {
    ffmpeg(...scene('color=black:'), '-vf', grain, '-c:v', 'ffv1', at('leader.mkv'));
    ffmpeg('-i', at('pick.mkv'), '-frames:v', '2', '-c', 'copy', at('two.mkv'));
    const refusals: [string[], RegExp][] = [
      [['two.mkv'], /has 2 frames, too few to pick from\. Name frames by hand: two\.mkv@f1/],
      [['leader.mkv'], /none of the \d+ frames looked at will do \(\d+ black\)/],
      [['bars.png', '--stills', '3'], /--stills: is for one movie file/],
      [['pick.mkv', 'bars.png'], /is measured in a run of its own/],
    ];
    for (const [words, said] of refusals) {
      const ended = gatelight(['measure', ...words]);
      expect(isRefusal(ended), ended.stderr).toBe(true);
      expect(ended.stderr).toMatch(said);
    }
  });
});
