import type { LutFormat } from '../lut-format.js';
import { createCubeReader } from './read.js';
import { cubeTitle, writeCube, writeCubeBytes } from './write.js';

export const cube: LutFormat = {
  title: 'Cube LUT',
  source: 'Cube LUT Specification 1.0 (2013)',
  extension: '.cube',
  titleOf: cubeTitle,
  createReader: createCubeReader,
  write: writeCube,
  writeBytes: writeCubeBytes,
};
