import type { Option } from './station.js';

export const surrounds: Option[] = [
  { label: 'average: lit', value: 'average' },
  { label: 'dim', value: 'dim' },
  { label: 'dark', value: 'dark' },
];
