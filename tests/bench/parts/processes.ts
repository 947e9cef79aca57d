import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { runNode, type Used } from '../child.js';
import { besideFigure, type Figure, timedFigure } from '../figures.js';
import { program, root, usualLook } from '../project.js';
import { inTurns, median } from '../rounds.js';
import type { Part, Setting } from '../setting.js';

const look = join(root, 'looks', usualLook);

async function measure({ folder, rounds }: Setting): Promise<Figure[]> {
  const nothing = join(folder, 'nothing.mjs');
  writeFileSync(nothing, '');
  const used: Record<string, Used[]> = { 33: [], 65: [] };
  const build = (size: 33 | 65) => () => {
    const output = join(folder, `built-${size}.cube`);
    const one = runNode(program, ['build', look, '--size', `${size}`, '-o', output, '--force']);
    used[size].push(one);
    return one.processorSeconds;
  };
  const times = await inTurns(
    {
      node: () => runNode(nothing, []).processorSeconds,
      start: () => runNode(program, ['--version']).processorSeconds,
      build33: build(33),
      build65: build(65),
    },
    rounds,
    0,
  );
  const node = (key: string) => ({ key, name: 'Node with nothing to do', times: times.node });
  const start = { what: 'start: gatelight --version', unit: 'ms', scale: 1000 };
  const passing = used[33].map((one) => one.passingSeconds);
  return [
    besideFigure(start, times.start, node('start.node')),
    timedFigure('gatelight build, 33 points', 'ms', 1000, times.build33, 450),
    timedFigure('gatelight build, 33 points, time that passes', 'ms', 1000, passing),
    timedFigure('gatelight build, 65 points', 'ms', 1000, times.build65),
    {
      what: 'gatelight build, 65 points: most memory held',
      unit: 'MB',
      ours: median(used[65].map((one) => one.peakMegabytes)),
    },
  ];
}

export const processesPart: Part = { title: 'Whole processes, processor time', measure };
