import { cases } from '../capture-speed/cases.js';
import { flickerIsRight, judge, speedIsRight, targets } from '../capture-speed/judge.js';
import type { Figure } from '../figures.js';
import { median } from '../rounds.js';
import type { Part, Setting } from '../setting.js';

/** Kept aside while the analysis was made: every speed, number of blades and camera once. */
const seed = 101;

/** For a quick look, every so many recordings one. */
const quickStep = 6;

async function measure({ quick }: Setting): Promise<Figure[]> {
  const recordings = cases(seed).filter((_, i) => !quick || i % quickStep === 0);
  const judged = [];
  for (const recording of recordings) judged.push(await judge(recording));
  const count = `of ${judged.length} recordings`;
  const off = (shares: (number | undefined)[]) => 100 * median(shares.map((share) => Math.abs(share ?? 1)));
  const wrongSpeeds = judged.filter((one) => !speedIsRight(one));
  return [
    {
      what: `${count}, those whose speed is more than ${100 * targets.speed} % off`,
      ours: wrongSpeeds.length,
      unit: '',
      most: 0,
    },
    {
      what: '... and not named as the other of two that look alike',
      ours: wrongSpeeds.filter(({ amongOthers }) => !amongOthers).length,
      unit: '',
      most: 0,
    },
    { what: 'speed off by, median', ours: off(judged.map(({ speedOff }) => speedOff)), unit: '%' },
    {
      what: `${count}, those whose flicker is more than ${100 * targets.flicker} % off`,
      ours: judged.filter((one) => !flickerIsRight(one)).length,
      unit: '',
      most: 0,
    },
    { what: 'flicker off by, median', ours: off(judged.map(({ flickerOff }) => flickerOff)), unit: '%' },
  ];
}

export const speedPart: Part = { title: 'The speed of a projector, from simulated recordings', measure };
